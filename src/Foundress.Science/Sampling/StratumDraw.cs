namespace Foundress.Science.Sampling;

/// <summary>What was drawn in one apiary.</summary>
/// <param name="Apiary">Name of the apiary.</param>
/// <param name="Chosen">The colonies to sample, in the order they were drawn.</param>
/// <param name="Reserves">All other colonies, in the order in which they stand in for a chosen one that cannot be sampled.</param>
public sealed record StratumDraw(string Apiary, IReadOnlyList<string> Chosen, IReadOnlyList<string> Reserves);
