namespace Foundress.Book.Planning;

/// <summary>Plans, or controls on days, that were dropped, and why.</summary>
/// <param name="Count">How many.</param>
/// <param name="Reason">Why, in a sentence.</param>
/// <param name="Sure">False where the reason is a first reckoning that may be wrong.</param>
public sealed record DroppedPlans(int Count, string Reason, bool Sure = true);
