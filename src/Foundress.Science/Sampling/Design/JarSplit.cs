namespace Foundress.Science.Sampling;

/// <summary>One way to spread jars over colonies.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="RelativeError">Standard error of the apiary's average over that average.</param>
public readonly record struct JarSplit(SamplingPlan Plan, double RelativeError);
