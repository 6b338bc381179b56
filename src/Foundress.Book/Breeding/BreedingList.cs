using Foundress.Book.State;
using Foundress.Science.Estimation;

namespace Foundress.Book.Breeding;

/// <summary>Colonies ranked by how slowly their mites grow.</summary>
/// <param name="Rows">The colonies, slowest growth first.</param>
/// <param name="Ranking">The ranking with its figures; null when there are too few colonies.</param>
/// <param name="LeftOut">Living colonies without a jar in the time looked at.</param>
/// <param name="Sentence">What the list is worth, in plain words.</param>
public sealed record BreedingList(
    IReadOnlyList<(Colony Colony, ColonyGrowth Growth)> Rows, GrowthRanking? Ranking, IReadOnlyList<Colony> LeftOut, string Sentence);
