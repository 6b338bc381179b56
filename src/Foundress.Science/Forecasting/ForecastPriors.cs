namespace Foundress.Science.Forecasting;

/// <summary>
/// How much colonies and apiaries differ before anything was counted. Spreads are standard deviations of natural
/// logarithms. The values and their sources are knowledge, not code.
/// </summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
public sealed record ForecastPriors
{
    /// <summary>Spread of the level between apiaries at one time of the year, 0.05 to 3.</summary>
    public required double StartApiarySpread { get; init; }

    /// <summary>Spread of the level between colonies of an apiary, 0.05 to 3.</summary>
    public required double StartColonySpread { get; init; }

    /// <summary>Spread of reproduction between apiaries and seasons, 0.01 to 1.</summary>
    public required double ReproductionApiarySpread { get; init; }

    /// <summary>Spread of reproduction between colonies of an apiary, 0.01 to 1.</summary>
    public required double ReproductionColonySpread { get; init; }

    /// <summary>Median of mites carried in per day all year, 0.001 to 100.</summary>
    public required double InflowMedian { get; init; }

    /// <summary>Median of mites carried in per day at the height of the late season, 0.001 to 1000.</summary>
    public required double LateInflowMedian { get; init; }

    /// <summary>Spread of what is carried in between apiaries, 0.01 to 3.</summary>
    public required double InflowApiarySpread { get; init; }

    /// <summary>Spread of what is carried in between colonies of an apiary, 0.01 to 3.</summary>
    public required double InflowColonySpread { get; init; }

    /// <summary>Spread of the share of drone cells between apiaries, 0.01 to 2.</summary>
    public required double DroneApiarySpread { get; init; }

    /// <summary>Spread of the share of drone cells between colonies, 0.01 to 2.</summary>
    public required double DroneColonySpread { get; init; }

    /// <summary>Spread of the kill rate of a control between uses, besides its own between colonies, 0 to 2.</summary>
    public required double ControlSpread { get; init; }

    /// <summary>How far the effect of a control is the same in all colonies of an apiary: share of its variance, 0.01 to 0.99.</summary>
    public required double ControlSharedPart { get; init; }

    /// <summary>What the model leaves out: spread of the level's natural logarithm 30 days behind the last count, 0 to 2.</summary>
    public required double DriftPerMonth { get; init; }

    /// <summary>Days in which such a stray loses its memory by 1/e: far behind the last count it grows no further. 10 to 3650.</summary>
    public required double DriftMemory { get; init; }

    /// <summary>The same for a control that began behind the last count, on top: 0 to 2.</summary>
    public required double DriftAfterControl { get; init; }

    /// <summary>Size of the negative binomial scatter between jars of one colony on one day, 0.1 to 1000.</summary>
    public required double JarSize { get; init; }

    /// <summary>Share of counts that say nothing of their colony (mixed up, miswritten), 0.0001 to 0.2.</summary>
    public required double StrayShare { get; init; }

    /// <summary>Mites per bee of a count that says nothing, 0.001 to 1.</summary>
    public required double StrayLoad { get; init; }

    /// <summary>Throws when a figure is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Names the figure and its range.</exception>
    public ForecastPriors Checked()
    {
        Check(StartApiarySpread, 0.05, 3d, nameof(StartApiarySpread));
        Check(StartColonySpread, 0.05, 3d, nameof(StartColonySpread));
        Check(ReproductionApiarySpread, 0.01, 1d, nameof(ReproductionApiarySpread));
        Check(ReproductionColonySpread, 0.01, 1d, nameof(ReproductionColonySpread));
        Check(InflowMedian, 0.001, 100d, nameof(InflowMedian));
        Check(LateInflowMedian, 0.001, 1000d, nameof(LateInflowMedian));
        Check(InflowApiarySpread, 0.01, 3d, nameof(InflowApiarySpread));
        Check(InflowColonySpread, 0.01, 3d, nameof(InflowColonySpread));
        Check(DroneApiarySpread, 0.01, 2d, nameof(DroneApiarySpread));
        Check(DroneColonySpread, 0.01, 2d, nameof(DroneColonySpread));
        Check(ControlSpread, 0d, 2d, nameof(ControlSpread));
        Check(ControlSharedPart, 0.01, 0.99, nameof(ControlSharedPart));
        Check(DriftPerMonth, 0, 2, nameof(DriftPerMonth));
        Check(DriftMemory, 10, 3650, nameof(DriftMemory));
        Check(DriftAfterControl, 0, 2, nameof(DriftAfterControl));
        Check(JarSize, 0.1, 1000d, nameof(JarSize));
        Check(StrayShare, 0.0001, 0.2, nameof(StrayShare));
        Check(StrayLoad, 0.001, 1d, nameof(StrayLoad));
        return this;
    }

    private static void Check(double value, double low, double high, string name)
    {
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(name, value, $"This figure of the forecast lies between {low} and {high}.");
    }
}
