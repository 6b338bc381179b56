namespace Foundress.Science.Estimation;

/// <summary>Limits around a level.</summary>
/// <param name="Lower">The lower limit.</param>
/// <param name="Upper">The upper limit: for a jar with no mites this is the news, never "mite free".</param>
/// <param name="Confidence">Two-sided confidence, above 0 and below 1; half of the rest lies beyond each limit.</param>
/// <param name="Method">How the limits were made.</param>
public readonly record struct LevelInterval(MiteLevel Lower, MiteLevel Upper, double Confidence, IntervalMethod Method)
{
    /// <summary>Distance between the limits, in mites per 100 bees.</summary>
    public double Width => Upper.Per100Bees - Lower.Per100Bees;

    /// <summary>True when the level lies between the limits or on one.</summary>
    public bool Contains(MiteLevel level) => level >= Lower && level <= Upper;
}
