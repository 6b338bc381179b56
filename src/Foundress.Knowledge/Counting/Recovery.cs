namespace Foundress.Knowledge;

/// <summary>The share of the mites on the sampled bees that a method brings off, as one source found it.</summary>
/// <param name="Share">Per cent of the mites on the bees.</param>
/// <param name="Conditions">What was done: liquid, time, bees.</param>
public sealed record Recovery(Figure Share, string Conditions);
