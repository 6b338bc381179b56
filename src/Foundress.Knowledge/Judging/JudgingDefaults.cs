namespace Foundress.Knowledge;

/// <summary>How sure a judgement must be, and which lines it uses, until the keeper decides otherwise.</summary>
/// <param name="SureBelow">A colony is called below the line when its chance of being over it is at most this, 0 to 1.</param>
/// <param name="SureAbove">A colony is called above the line when its chance of being over it is at least this, 0 to 1; greater than <paramref name="SureBelow"/>.</param>
/// <param name="Confidence">Confidence of the intervals shown, between 0 and 1.</param>
/// <param name="DefaultPolicyId">The line policy used until the keeper chooses one.</param>
/// <param name="PassNarrowing">Another pass over the same bees is worth it when it is expected to take this share off the interval, between 0 and 1.</param>
/// <param name="PassMites">And when it is expected to narrow the interval by at least so many mites, 0 or more.</param>
public sealed record JudgingDefaults(Figure SureBelow, Figure SureAbove, Figure Confidence, string DefaultPolicyId, Figure PassNarrowing, Figure PassMites);
