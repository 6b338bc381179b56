namespace Foundress.Science.Dynamics;

/// <summary>What a control does to the mites of a colony while it is at work.</summary>
/// <param name="FirstDay">The first day it works, counted from the first day of the course; may lie before it.</param>
/// <param name="Days">For how many days it works, 1 or more.</param>
/// <param name="AdultKillPerDay">Share of the mites on adult bees killed in a day, 0 to below 1, at the usual effect.</param>
/// <param name="BroodKillPerDay">Share of the mites in sealed cells killed in a day, 0 to below 1, at the usual effect.</param>
/// <param name="LogSpread">Standard deviation of the natural logarithm of the kill rate between colonies, 0 to 2.</param>
/// <param name="FailureShare">Share of operations in which it fails for all colonies alike, 0 to 0.99.</param>
/// <param name="FailureFactor">What the kill rate is multiplied by where it fails, 0 to 1.</param>
/// <param name="HalfLife">Days in which the kill rate falls by half, above 0; null where it stays.</param>
public readonly record struct ControlEffect(
    int FirstDay, int Days, double AdultKillPerDay, double BroodKillPerDay, double LogSpread, double FailureShare = 0d, double FailureFactor = 1d, double? HalfLife = null)
{
    private const double Ln2 = 0.693147180559945309;

    /// <summary>The day after the last day it works.</summary>
    public int EndDay => FirstDay + Days;

    /// <summary>Throws when a value is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Names the value.</exception>
    public ControlEffect Checked()
    {
        if (Days < 1)
            throw new ArgumentOutOfRangeException(nameof(Days), Days, "A control works for at least one day.");
        if (AdultKillPerDay is not (>= 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(AdultKillPerDay), AdultKillPerDay, "The share killed in a day lies from 0 to below 1.");
        if (BroodKillPerDay is not (>= 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(BroodKillPerDay), BroodKillPerDay, "The share killed in a day lies from 0 to below 1.");
        if (LogSpread is not (>= 0d and <= 2d))
            throw new ArgumentOutOfRangeException(nameof(LogSpread), LogSpread, "The log spread of a kill rate lies between 0 and 2.");
        if (FailureShare is not (>= 0d and <= 0.99))
            throw new ArgumentOutOfRangeException(nameof(FailureShare), FailureShare, "The share of failures lies from 0 to 0.99.");
        if (FailureFactor is not (>= 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(FailureFactor), FailureFactor, "The factor of a failure lies from 0 to 1.");
        if (HalfLife is { } half && !(half > 0d && half <= 3650d))
            throw new ArgumentOutOfRangeException(nameof(HalfLife), half, "The days in which a kill rate falls by half lie above 0, up to 3650.");
        return this;
    }

    /// <summary>The kill rates of a day as a share of those of the first day: 0 before and after, 0 to 1 between.</summary>
    internal double ShareOn(int day)
    {
        if (day < FirstDay || day >= EndDay)
            return 0d;
        return HalfLife is { } half ? Numerics.PortableFunctions.Exp(-(day - FirstDay) * Ln2 / half) : 1d;
    }
}
