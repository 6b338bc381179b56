namespace Foundress.Book.Judging;

/// <summary>One line of "show the working".</summary>
/// <param name="What">What was worked out.</param>
/// <param name="How">The formula with its numbers, and the outcome.</param>
/// <param name="Source">Where the formula or figure comes from.</param>
public sealed record WorkingStep(string What, string How, string Source);
