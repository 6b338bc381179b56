using Foundress.Science.Dynamics.Bees;

namespace Foundress.Knowledge;

/// <summary>The bees' year in a climate.</summary>
/// <param name="Id">Name of the climate.</param>
/// <param name="Climate">Its figures, written for one place in the north.</param>
public sealed record ClimateSeason(string Id, BroodClimate Climate) : IHasId;
