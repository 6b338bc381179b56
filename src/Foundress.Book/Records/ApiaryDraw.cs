using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>The colonies drawn in one apiary.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Chosen">The colonies to sample, in the order drawn.</param>
/// <param name="Reserves">The rest, in the order in which they stand in for a colony that cannot be sampled.</param>
/// <param name="EarlyStop">The rule by which the round may stop here early; none to sample every colony drawn.</param>
public sealed record ApiaryDraw(ApiaryId Apiary, IReadOnlyList<ColonyId> Chosen, IReadOnlyList<ColonyId> Reserves, EarlyStop? EarlyStop = null);
