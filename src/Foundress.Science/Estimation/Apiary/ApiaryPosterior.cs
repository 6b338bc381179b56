using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// What the jars of some colonies say about a whole apiary: its mean level, each sampled colony, and the colonies that were not
/// sampled. The colonies' levels are gamma distributed around the apiary's mean with a common spread; mites are Poisson given a
/// colony's level and its bees. Computed by quadrature on a fixed number of nodes: the same jars always give the same
/// numbers. Immutable; safe for concurrent use.
/// </summary>
/// <remarks>
/// Formulas, priors, coverage and accuracy: docs/methods/apiary.md. Chances agree with long Markov chains to about
/// 0.006, those of single colonies without mites to 0.015, with bees assumed within 40 % to 0.04. Sampled
/// colonies must have been drawn without regard to their mites; jars of one colony are taken as counts of one level.
/// </remarks>
public sealed class ApiaryPosterior
{
    /// <summary>The largest number of unsampled colonies that is accepted.</summary>
    public const int MostUnsampled = 100_000;

    private const int LargestCounted = 5_000;

    private readonly ApiaryGrid _grid;
    private readonly GammaComponents _average;
    private readonly CellMeans _population;

    private ApiaryPosterior(ApiaryGrid grid, ColonyJars[] sampled, int unsampled, bool spreadIdentified)
    {
        _grid = grid;
        Unsampled = unsampled;
        Spread = new(grid.Rule, grid.SpreadWeights);

        double[] means = new double[grid.Cells];
        double[] variances = new double[grid.Cells];
        ColonyPosterior[] colonies = new ColonyPosterior[sampled.Length];
        for (int i = 0; i < sampled.Length; i++)
        {
            grid.ColonyMoments(i, means, variances);
            colonies[i] = new(sampled[i], OwnLevel(sampled[i]), GammaComponents.FromCells(grid, means, variances));
        }

        Sampled = colonies;
        SpreadIdentified = spreadIdentified;
        _average = ApiaryAverage.Of(grid, sampled.Length, unsampled);
        _population = new(grid);
    }

    /// <summary>The sampled colonies, in the order given.</summary>
    public IReadOnlyList<ColonyPosterior> Sampled { get; }

    /// <summary>Number of colonies of the apiary that were not sampled.</summary>
    public int Unsampled { get; }

    /// <summary>How unequal the colonies are.</summary>
    public SpreadPosterior Spread { get; }

    /// <summary>
    /// True when the jars can say anything about how unequal the colonies are: at least two colonies were sampled and at
    /// least one mite was found (in any apiary of an operation with shared spread). Otherwise all that is said about unsampled colonies rests on the prior.
    /// </summary>
    public bool SpreadIdentified { get; }

    /// <summary>Mean level of the colonies that stand in the apiary, sampled and not.</summary>
    public MiteLevel Mean => MiteLevel.FromPerBee(_average.Mean);

    /// <summary>The level as likely to be below as above the apiary's mean.</summary>
    public MiteLevel MedianOfMean => MiteLevel.FromPerBee(_average.Quantile(0.5));

    /// <summary>Mean level of the colonies this apiary's could have been: what a colony added from the same stock would have on average.</summary>
    public MiteLevel PopulationMean => MiteLevel.FromPerBee(_population.Mean);

    internal GammaComponents Average => _average;

    /// <summary>The posterior of an apiary.</summary>
    /// <param name="sampled">At least one sampled colony; names are unique.</param>
    /// <param name="unsampled">Number of other colonies in the apiary, 0 to <see cref="MostUnsampled"/>.</param>
    /// <param name="prior">What is taken for granted; by default <see cref="ApiaryPrior.Weak"/>.</param>
    /// <exception cref="ArgumentException">No colony was sampled, or a name occurs twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="unsampled"/> is out of its range.</exception>
    public static ApiaryPosterior FromJars(IReadOnlyList<ColonyJars> sampled, int unsampled, ApiaryPrior? prior = null)
    {
        ColonyJars[] colonies = CheckColonies(sampled, unsampled);
        PooledExposure[] pooled = Pool(colonies);
        ApiaryPrior taken = prior is { LogSpread: > 0d } given ? given : ApiaryPrior.Weak;
        double centre = Math.Log(taken.Median.PerBee);
        double LogPrior(double spread, double logMean)
        {
            double z = (logMean - centre) / taken.LogSpread;
            double s = spread / taken.SpreadScale;
            return -0.5 * ((z * z) + (s * s));
        }

        double start = Start(pooled);
        SpreadRule rule = SpreadRule.Find(new(Known(pooled)), LogPrior, start);
        ApiaryGrid grid = new(new(pooled), rule, (c, logMean) => LogPrior(rule.Nodes[c], logMean), start);
        return new(grid, colonies, unsampled, pooled.Length >= 2 && pooled.Any(colony => colony.Mites > 0));
    }

    /// <summary>The equal-tailed interval of the mean level of the colonies that stand in the apiary.</summary>
    /// <param name="confidence">Above 0 and below 1, for example 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public LevelInterval MeanInterval(double confidence) => Interval(_average, confidence);

    /// <summary>The equal-tailed interval of <see cref="PopulationMean"/>.</summary>
    /// <param name="confidence">Above 0 and below 1, for example 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public LevelInterval PopulationMeanInterval(double confidence) => Interval(_population, confidence);

    /// <summary>The chance that the mean level of the colonies that stand in the apiary is over a line.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public Chance ChanceMeanOver(MiteLevel line) => Chance.Of(_average.Upper(line.PerBee));

    /// <summary>The chance that <see cref="PopulationMean"/>'s true value is over a line.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public Chance ChancePopulationMeanOver(MiteLevel line) => Chance.Of(_population.Upper(line.PerBee));

    /// <summary>The chance that one given unsampled colony (or one more of the same stock) is over a line.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public Chance ChanceUnsampledOver(MiteLevel line)
    {
        double sum = 0d;
        for (int cell = 0; cell < _grid.Cells; cell++)
            sum += _grid.Weights[cell] * UnsampledUpper(cell, line.PerBee);
        return Chance.Of(Math.Min(1d, sum));
    }

    /// <summary>The expected number of unsampled colonies over a line.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public double ExpectedUnsampledOver(MiteLevel line) => Unsampled * ChanceUnsampledOver(line).Value;

    /// <summary>The expected number of sampled colonies over a line.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public double ExpectedSampledOver(MiteLevel line)
    {
        double sum = 0d;
        foreach (ColonyPosterior colony in Sampled)
            sum += colony.ChanceOver(line).Value;
        return sum;
    }

    /// <summary>The chance that at least one unsampled colony is over a line; 0 when every colony was sampled.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public Chance ChanceAnyUnsampledOver(MiteLevel line)
    {
        if (Unsampled == 0)
            return Chance.Of(0d);
        double sum = 0d;
        for (int cell = 0; cell < _grid.Cells; cell++)
            sum += _grid.Weights[cell] * -ElementaryFunctions.ExpM1(Unsampled * ElementaryFunctions.Log1P(-Math.Min(UnsampledUpper(cell, line.PerBee), 1d - 1e-16)));
        return Chance.Of(Math.Clamp(sum, 0d, 1d));
    }

    /// <summary>The distribution of the number of unsampled colonies over a line: binomial in each cell of the grid, hence wider than a binomial.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    /// <exception cref="InvalidOperationException">More than 5,000 colonies were not sampled: the table would be too long.</exception>
    public ColonyCount UnsampledOver(MiteLevel line)
    {
        if (Unsampled > LargestCounted)
            throw new InvalidOperationException($"The distribution is tabulated for up to {LargestCounted} unsampled colonies; this apiary has {Unsampled}. Use the expected number.");
        double[] chances = new double[Unsampled + 1];
        for (int cell = 0; cell < _grid.Cells; cell++)
            AddBinomial(chances, _grid.Weights[cell], UnsampledUpper(cell, line.PerBee));
        return new(chances);
    }

    /// <summary>Everything a decision about the whole apiary needs, for one line.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    /// <param name="confidence">Confidence of the interval of the mean, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public ApiaryOutlook Outlook(MiteLevel line, double confidence)
    {
        double noneSampled = 1d;
        foreach (ColonyPosterior colony in Sampled)
            noneSampled *= 1d - colony.ChanceOver(line).Value;
        return new()
        {
            Line = line,
            SampledColonies = Sampled.Count,
            UnsampledColonies = Unsampled,
            MitesCounted = Sampled.Sum(colony => colony.Colony.Jars.Sum(jar => (long)jar.Mites)),
            BeesCounted = Sampled.Sum(colony => colony.Colony.Jars.Sum(jar => jar.Bees.Bees)),
            Mean = Mean,
            MeanInterval = MeanInterval(confidence),
            ChanceMeanOver = ChanceMeanOver(line),
            ExpectedSampledOver = ExpectedSampledOver(line),
            ExpectedUnsampledOver = ExpectedUnsampledOver(line),
            ChanceAnySampledOver = Chance.Of(Math.Clamp(1d - noneSampled, 0d, 1d)),
            ChanceAnyUnsampledOver = ChanceAnyUnsampledOver(line),
            SpreadMedian = Spread.Median,
            SpreadIdentified = SpreadIdentified,
        };
    }

    internal static ColonyJars[] CheckColonies(IReadOnlyList<ColonyJars> sampled, int unsampled)
    {
        ArgumentNullException.ThrowIfNull(sampled);
        if (sampled.Count == 0)
            throw new ArgumentException("Nothing can be said about an apiary before a colony was sampled: take jars from at least one, better from eight.", nameof(sampled));
        if (unsampled is < 0 or > MostUnsampled)
            throw new ArgumentOutOfRangeException(nameof(unsampled), unsampled, $"The number of unsampled colonies lies between 0 and {MostUnsampled}.");
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (ColonyJars colony in sampled)
        {
            if (!names.Add(colony.Colony))
                throw new ArgumentException($"Colony {colony.Colony} occurs twice: put all its jars into one entry.", nameof(sampled));
        }

        return [.. sampled];
    }

    internal static PooledExposure[] Pool(ReadOnlySpan<ColonyJars> colonies)
    {
        PooledExposure[] pooled = new PooledExposure[colonies.Length];
        for (int i = 0; i < colonies.Length; i++)
            pooled[i] = PooledExposure.Of(colonies[i].Jars);
        return pooled;
    }

    internal static PooledExposure[] Known(PooledExposure[] pooled) => Array.ConvertAll(pooled, colony => colony with { LogSpread = 0d });

    internal static double Start(ReadOnlySpan<PooledExposure> pooled)
    {
        double mites = 0.5;
        double exposure = 0d;
        foreach (PooledExposure colony in pooled)
            (mites, exposure) = (mites + colony.Mites, exposure + colony.Median);
        return Math.Log(mites / exposure);
    }

    internal static ApiaryPosterior FromGrid(ApiaryGrid grid, ColonyJars[] sampled, int unsampled, bool spreadIdentified) =>
        new(grid, sampled, unsampled, spreadIdentified);

    private static LevelInterval Interval(RateDistribution rate, double confidence)
    {
        double tail = CountIntervals.Tail(confidence);
        return new(MiteLevel.FromPerBee(rate.Quantile(tail)), MiteLevel.FromPerBee(rate.Quantile(1d - tail)), confidence, IntervalMethod.Posterior);
    }

    private static double OwnLevel(ColonyJars colony)
    {
        double mites = 0d;
        double exposure = 0d;
        foreach (JarCount jar in colony.Jars)
            (mites, exposure) = (mites + jar.Mites, exposure + jar.Exposure);
        return mites / exposure;
    }

    // Adds weight times the binomial chances, walking away from the most likely number so that nothing under- or overflows.
    private static void AddBinomial(double[] chances, double weight, double p)
    {
        int n = chances.Length - 1;
        if (p <= 1e-300 || p >= 1d)
        {
            chances[p >= 1d ? n : 0] += weight;
            return;
        }

        int mode = Math.Min(n, (int)((n + 1d) * p));
        double odds = p / (1d - p);
        double top = mode == 0 ? Math.Exp(n * ElementaryFunctions.Log1P(-p))
            : mode == n ? Math.Exp(n * Math.Log(p))
            : Math.Exp(-GammaFunctions.LogGamma(mode + 1d) - GammaFunctions.LogGamma(n - mode + 1d) + GammaFunctions.LogGamma(n + 1d)
                + (mode * Math.Log(p)) + ((n - mode) * ElementaryFunctions.Log1P(-p)));
        double value = weight * top;
        chances[mode] += value;
        for (int i = mode; i < n && value > 1e-20; i++)
        {
            value *= (n - i) / (i + 1d) * odds;
            chances[i + 1] += value;
        }

        value = weight * top;
        for (int i = mode; i > 0 && value > 1e-20; i--)
        {
            value *= i / ((n - i + 1d) * odds);
            chances[i - 1] += value;
        }
    }

    // Chance over a line of an unsampled colony in a cell: a gamma distribution of which the cell's own width is a part.
    private double UnsampledUpper(int cell, double line)
    {
        double spread = _grid.Spread(cell);
        double shape = 1d / ((spread * spread) + _grid.WidthVariance(cell));
        return GammaFunctions.Upper(shape, shape * line * Math.Exp(-_grid.LogMeans[cell]));
    }
}
