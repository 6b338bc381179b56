namespace Foundress.Book.Choosing;

/// <summary>Why a control is ruled out, what must be known first, or what to mind.</summary>
/// <param name="Ground">What it is about.</param>
/// <param name="Text">Whole sentences for the keeper.</param>
/// <param name="Source">Where the rule comes from; null for what the keeper or the book said.</param>
/// <param name="Holds">Whether what it is about is so in the colonies (supers are on), and only the rule for it is not known.</param>
public sealed record Reason(Ground Ground, string Text, string? Source = null, bool Holds = false);
