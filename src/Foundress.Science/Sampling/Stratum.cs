namespace Foundress.Science.Sampling;

/// <summary>One apiary's part of a draw.</summary>
/// <param name="Apiary">Its name, unlike that of any other apiary in the draw.</param>
/// <param name="Colonies">Names of the colonies that can be drawn, each once; their order does not matter.</param>
/// <param name="Take">How many to choose, 0 to the number of colonies.</param>
public sealed record Stratum(string Apiary, IReadOnlyList<string> Colonies, int Take);
