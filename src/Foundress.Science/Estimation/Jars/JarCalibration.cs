using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// What one observer's jars of one scoop hold, learnt from the jars whose bees were counted: the posterior of the usual number
/// and of the spread between jars, and what the next jar holds. Immutable.
/// </summary>
/// <remarks>
/// ln bees is normal between jars; mean and variance have a normal-inverse-gamma prior, so everything is in closed form.
/// Formulas and sources: docs/methods/calibration.md.
/// </remarks>
public sealed record JarCalibration
{
    private readonly double _weight;
    private readonly double _centre;
    private readonly double _shape;
    private readonly double _scale;

    private JarCalibration(JarPrior prior, int counted, double mean, double squares)
    {
        Prior = prior;
        Counted = counted;
        double priorCentre = Math.Log(prior.Bees);
        double off = mean - priorCentre;
        _weight = prior.JarsForMean + counted;
        _centre = priorCentre + (counted * off / _weight);
        _shape = 0.5 * (prior.JarsForSpread + counted);
        _scale = 0.5 * ((prior.JarsForSpread * prior.LogSpread * prior.LogSpread) + squares + (prior.JarsForMean * counted * off * off / _weight));
    }

    /// <summary>The prior it was made with.</summary>
    public JarPrior Prior { get; }

    /// <summary>Jars counted.</summary>
    public int Counted { get; }

    /// <summary>Bees in the usual jar: half of all jars hold fewer (posterior median).</summary>
    public double UsualBees => Math.Exp(_centre);

    /// <summary>Spread between jars, as standard deviation of ln bees (root of the posterior mean variance).</summary>
    public double LogSpread => Math.Sqrt(_scale / (_shape - 1d));

    /// <summary>
    /// The next jar, not counted: lognormal with the median and the standard deviation of ln bees that the predictive Student
    /// t distribution has. The lognormal's far tails are thinner.
    /// </summary>
    /// <exception cref="InvalidOperationException">The counted jars differ so wildly that the next one has a log spread over 1: they do not come from one scoop.</exception>
    public BeeCount NextJar
    {
        get
        {
            double spread = ExpectedLogSpreadAfter(0);
            if (spread > 1d)
                throw new InvalidOperationException($"The {Counted} counted jars differ too much for one scoop (log spread {spread:F2}, over 1): count the bees of every jar, or sort the counted jars by scoop.");
            return BeeCount.Uncertain(BeeBasis.Assumed, Math.Max(1d, UsualBees), spread);
        }
    }

    /// <summary>The calibration of one observer's scoop.</summary>
    /// <param name="prior">What is believed beforehand.</param>
    /// <param name="counted">Bees of each counted jar, at least 1 each; may be none.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 1.</exception>
    public static JarCalibration From(JarPrior prior, IReadOnlyList<int> counted)
    {
        ArgumentNullException.ThrowIfNull(prior);
        ArgumentNullException.ThrowIfNull(counted);
        double mean = 0d;
        double squares = 0d;
        for (int i = 0; i < counted.Count; i++)
        {
            if (counted[i] < 1)
                throw new ArgumentOutOfRangeException(nameof(counted), counted[i], "A counted jar holds at least one bee.");

            // Welford's running sums: no digits are lost when jars are nearly equal.
            double log = Math.Log(counted[i]);
            double off = log - mean;
            mean += off / (i + 1);
            squares += off * (log - mean);
        }

        return new(prior, counted.Count, mean, squares);
    }

    /// <summary>A calibration for each observer and scoop, in ordinal order of observer, then scoop.</summary>
    /// <param name="prior">What is believed beforehand of each of them.</param>
    /// <param name="jars">The counted jars.</param>
    public static IReadOnlyList<ScoopCalibration> ByScoop(JarPrior prior, IReadOnlyList<CountedJar> jars)
    {
        ArgumentNullException.ThrowIfNull(jars);
        return
        [
            .. jars.GroupBy(jar => (jar.Observer, jar.Scoop))
                .OrderBy(group => group.Key.Observer, StringComparer.Ordinal)
                .ThenBy(group => group.Key.Scoop, StringComparer.Ordinal)
                .Select(group => new ScoopCalibration(group.Key.Observer, group.Key.Scoop, From(prior, [.. group.Select(jar => jar.Bees)]))),
        ];
    }

    /// <summary>The bees of the usual jar with a given chance of being fewer.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public double UsualBeesQuantile(double p) =>
        Math.Exp(_centre + (StudentDistribution.Quantile(p, 2d * _shape) * Math.Sqrt(_scale / (_shape * _weight))));

    /// <summary>The spread between jars with a given chance of being smaller, as standard deviation of ln bees.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public double LogSpreadQuantile(double p)
    {
        if (p is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile is asked for a chance above 0 and below 1.");
        return Math.Sqrt(_scale / GammaFunctions.InverseUpper(_shape, p));
    }

    /// <summary>The bees of the next jar with a given chance of being fewer: exact, not the lognormal of <see cref="NextJar"/>.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public double NextJarQuantile(double p) => Math.Exp(_centre + (StudentDistribution.Quantile(p, 2d * _shape) * NextScale));

    /// <summary>The chance that the next jar holds at most a number of bees: exact.</summary>
    /// <param name="bees">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bees"/> is not a finite number above 0.</exception>
    public Chance ChanceNextJarAtMost(double bees)
    {
        if (!(bees > 0d) || !double.IsFinite(bees))
            throw new ArgumentOutOfRangeException(nameof(bees), bees, "The number of bees is a finite number above 0.");
        return Chance.Of(StudentDistribution.Cumulative((Math.Log(bees) - _centre) / NextScale, 2d * _shape));
    }

    /// <summary>
    /// The log spread of the next uncounted jar to be expected once more jars are counted (root of the expected variance,
    /// exact); 0 more gives today's. It cannot fall below the spread between jars: only counting that jar itself does.
    /// </summary>
    /// <param name="more">More counted jars, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="more"/> is negative.</exception>
    public double ExpectedLogSpreadAfter(int more)
    {
        if (more < 0)
            throw new ArgumentOutOfRangeException(nameof(more), more, "The number of jars still to be counted is 0 or more.");
        return Math.Sqrt(_scale / (_shape - 1d) * (1d + (1d / (_weight + more))));
    }

    private double NextScale => Math.Sqrt(_scale * (_weight + 1d) / (_shape * _weight));
}
