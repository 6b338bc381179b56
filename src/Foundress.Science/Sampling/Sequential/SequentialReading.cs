namespace Foundress.Science.Sampling;

/// <summary>Where a round stands after its jars.</summary>
/// <param name="Decision">What they allow; the first decision reached stands.</param>
/// <param name="Jars">Jars that led to it.</param>
/// <param name="LogRatio">ln likelihood ratio of the high to the low level after those jars.</param>
public readonly record struct SequentialReading(SequentialDecision Decision, int Jars, double LogRatio);
