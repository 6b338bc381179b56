namespace Foundress.Science.Sampling;

/// <summary>How rounds of a sequential plan end at one true level.</summary>
/// <param name="Wait">Chance that the round ends with waiting.</param>
/// <param name="Act">Chance that it ends with acting.</param>
/// <param name="AverageJars">Jars taken on average.</param>
public readonly record struct SequentialOutcome(Chance Wait, Chance Act, double AverageJars);
