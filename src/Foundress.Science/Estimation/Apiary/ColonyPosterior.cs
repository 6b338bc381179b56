namespace Foundress.Science.Estimation;

/// <summary>
/// The level of one sampled colony as its own jars and the rest of its apiary say together: a single odd jar is drawn towards
/// the apiary, the more so the fewer bees it held and the more alike the colonies are. Immutable.
/// </summary>
public sealed class ColonyPosterior
{
    private readonly GammaComponents _rate;

    internal ColonyPosterior(ColonyJars jars, double ownLevel, GammaComponents rate) =>
        (Colony, OwnLevel, _rate) = (jars, MiteLevel.FromPerBee(ownLevel), rate);

    /// <summary>The colony and its jars.</summary>
    public ColonyJars Colony { get; }

    /// <summary>Mites over bees of its own jars alone.</summary>
    public MiteLevel OwnLevel { get; }

    /// <summary>The mean level.</summary>
    public MiteLevel Mean => MiteLevel.FromPerBee(_rate.Mean);

    /// <summary>The level that is as likely to be exceeded as not.</summary>
    public MiteLevel Median => Quantile(0.5);

    /// <summary>The level with a given chance of being lower.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public MiteLevel Quantile(double p) => p is > 0d and < 1d
        ? MiteLevel.FromPerBee(_rate.Quantile(p))
        : throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile is asked for a chance above 0 and below 1.");

    /// <summary>The equal-tailed interval.</summary>
    /// <param name="confidence">Above 0 and below 1, for example 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public LevelInterval Interval(double confidence)
    {
        double tail = CountIntervals.Tail(confidence);
        return new(Quantile(tail), Quantile(1d - tail), confidence, IntervalMethod.Posterior);
    }

    /// <summary>The chance that its level is over a line.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public Chance ChanceOver(MiteLevel line) => Chance.Of(_rate.Upper(line.PerBee));
}
