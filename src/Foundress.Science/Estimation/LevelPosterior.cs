namespace Foundress.Science.Estimation;

/// <summary>
/// What the jars of one colony on one date say about its level: the posterior of the level with Jeffreys' prior
/// (level^-½). Mites are Poisson given the bees; an uncertain number of bees is averaged over its lognormal distribution on a
/// fixed grid, so the same jars always give the same numbers. Immutable.
/// </summary>
/// <remarks>
/// Formulas, sources and limits: docs/methods/jar.md. The level is per adult bee and, unless a recovery is given, on the
/// scale of the counting method. Known bees: accurate to about 1e-12; uncertain bees: about 1e-10, relative.
/// </remarks>
public sealed class LevelPosterior
{
    private const double JeffreysShape = 0.5;

    private readonly RateDistribution _rate;

    private LevelPosterior(RateDistribution rate, JarCount[] jars) => (_rate, Jars) = (rate, jars);

    /// <summary>The jars it was made from.</summary>
    public IReadOnlyList<JarCount> Jars { get; }

    /// <summary>The mean level.</summary>
    public MiteLevel Mean => MiteLevel.FromPerBee(_rate.Mean);

    /// <summary>The level that is as likely to be exceeded as not.</summary>
    public MiteLevel Median => Quantile(0.5);

    /// <summary>The posterior from one jar.</summary>
    /// <param name="mites">Mites counted over all passes, 0 or more.</param>
    /// <param name="bees">The bees in the jar: a spread in their number widens the posterior.</param>
    /// <param name="recovery">Share of the mites the method gets off the bees, above 0 and at most 1; 1 keeps the method's own scale.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static LevelPosterior FromJar(int mites, BeeCount bees, double recovery = 1d) => FromJars([new JarCount(mites, bees, recovery)]);

    /// <summary>The posterior from several jars of the same colony and date, all on the scale of one method.</summary>
    /// <param name="jars">At least one jar. Bee numbers of different jars are taken as independent.</param>
    /// <exception cref="ArgumentException">There is no jar.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static LevelPosterior FromJars(IReadOnlyList<(int Mites, BeeCount Bees)> jars)
    {
        ArgumentNullException.ThrowIfNull(jars);
        return FromJars([.. jars.Select(jar => new JarCount(jar.Mites, jar.Bees))]);
    }

    /// <summary>The posterior from several jars of the same colony and date, each with its own recovery.</summary>
    /// <param name="jars">At least one jar. Bee numbers of different jars are taken as independent.</param>
    /// <exception cref="ArgumentException">There is no jar.</exception>
    public static LevelPosterior FromJars(IReadOnlyList<JarCount> jars)
    {
        ArgumentNullException.ThrowIfNull(jars);
        if (jars.Count == 0)
            throw new ArgumentException("A level needs at least one jar.", nameof(jars));

        JarCount[] own = [.. jars];
        if (own.All(jar => jar.Bees.LogSpread == 0d))
            return new(new GammaMixture(own.Sum(jar => (double)jar.Mites) + JeffreysShape, own.Sum(jar => jar.Exposure), 0d), own);
        if (own.Length > 1)
            return new(new PooledRate(own), own);

        // Given the mites, the bees are again lognormal: the prior of the level turns their density by bees^-½.
        double spread = own[0].Bees.LogSpread;
        double median = own[0].Exposure * Math.Exp(-JeffreysShape * spread * spread);
        return new(new GammaMixture(own[0].Mites + JeffreysShape, median, spread), own);
    }

    /// <summary>The level with a given chance of being lower.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public MiteLevel Quantile(double p) =>
        p is > 0d and < 1d
            ? MiteLevel.FromPerBee(_rate.Quantile(p))
            : throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile is asked for a chance above 0 and below 1.");

    /// <summary>The chance that the level is over a line.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public Chance ChanceOver(MiteLevel line) => Chance.Of(_rate.Upper(line.PerBee));

    /// <summary>The equal-tailed interval.</summary>
    /// <param name="confidence">Above 0 and below 1, for example 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public LevelInterval Interval(double confidence)
    {
        double tail = CountIntervals.Tail(confidence);
        return new(Quantile(tail), Quantile(1d - tail), confidence, IntervalMethod.Posterior);
    }
}
