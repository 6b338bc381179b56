namespace Foundress.Knowledge;

/// <summary>The share of a colony's mites that a control killed, as one source found it.</summary>
/// <param name="Share">Per cent of the mites.</param>
/// <param name="WithBrood">Whether the colonies had sealed brood; null when the source did not say.</param>
/// <param name="Conditions">What was done, where and when.</param>
public sealed record Efficacy(Figure Share, bool? WithBrood, string Conditions);
