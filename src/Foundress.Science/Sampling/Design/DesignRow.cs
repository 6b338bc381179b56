namespace Foundress.Science.Sampling;

/// <summary>What one number of colonies buys.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="RelativeError">Precision: standard error of the apiary's average over that average, for an apiary on the line.</param>
/// <param name="FindsOne">Detection: chance that at least one of the colonies over the line is among those sampled.</param>
/// <param name="ActsInVain">Decision: chance that an apiary at the harmless level is judged over the line.</param>
/// <param name="WaitsTooLong">Decision: chance that an apiary at the harmful level is judged not over the line.</param>
public readonly record struct DesignRow(SamplingPlan Plan, double RelativeError, Chance FindsOne, Chance ActsInVain, Chance WaitsTooLong);
