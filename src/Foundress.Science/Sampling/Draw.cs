namespace Foundress.Science.Sampling;

/// <summary>A draw of colonies that anyone can repeat from its seed and the colonies' names.</summary>
/// <param name="Seed">The seed.</param>
/// <param name="Strata">One draw for each apiary, by name in ordinal order.</param>
public sealed record Draw(ulong Seed, IReadOnlyList<StratumDraw> Strata);
