namespace Foundress.Science.Forecasting;

/// <summary>How well the particles carried the counts of a colony.</summary>
/// <param name="LogEvidence">Natural logarithm of the probability of the counts under the model, up to what does not depend on it.</param>
/// <param name="LeastEffectiveShare">The least share of the particles that still counted after a count, 1 for none lost; of the last pass.</param>
/// <param name="Passes">How often the history was run: 1 when the first beliefs carried it, more when particles were drawn anew nearer to the counts.</param>
/// <param name="Strays">Counts that are more likely astray (mixed up, miswritten) than of this colony, as far as model and record go.</param>
/// <param name="Thin">True when even then few particles carried a count: the counts contradict the model or each other, and the answer is rough.</param>
public readonly record struct FilterReport(double LogEvidence, double LeastEffectiveShare, int Passes, int Strays, bool Thin);
