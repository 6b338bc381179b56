namespace Foundress.Web.Kit;

/// <summary>One of several things to choose from.</summary>
/// <param name="Value">What is stored.</param>
/// <param name="Label">What is shown.</param>
/// <param name="Hint">A few more words, or null.</param>
public sealed record Choice(string Value, string Label, string? Hint = null);
