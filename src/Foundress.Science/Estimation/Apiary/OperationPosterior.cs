namespace Foundress.Science.Estimation;

/// <summary>
/// Several apiaries of one operation in the same round: their mean levels are lognormal around a common centre, and their
/// colonies share one spread. An apiary with few jars is drawn towards the others, one with none borrows from them. Immutable.
/// </summary>
/// <remarks>
/// Centre, spread between apiaries and spread between colonies are averaged over fixed nodes, nothing is plugged in as if it
/// were known: docs/methods/apiary.md.
/// </remarks>
public sealed class OperationPosterior
{
    /// <summary>Scale of the half-normal prior of the spread between apiaries (standard deviation of the logarithm of their mean levels).</summary>
    public const double BetweenApiariesScale = 1d;

    private OperationPosterior(IReadOnlyList<ApiaryPosterior> posteriors, IReadOnlyList<string> names, double between)
    {
        Apiaries = posteriors;
        Names = names;
        BetweenApiaries = between;
    }

    /// <summary>Names of the apiaries, in the order given.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>The posterior of each apiary, in the order given.</summary>
    public IReadOnlyList<ApiaryPosterior> Apiaries { get; }

    /// <summary>Posterior mean of the spread between apiaries: standard deviation of the natural logarithm of their mean levels.</summary>
    public double BetweenApiaries { get; }

    /// <summary>Mean level over all colonies of the operation.</summary>
    public MiteLevel Mean
    {
        get
        {
            double sum = 0d;
            double colonies = 0d;
            foreach (ApiaryPosterior apiary in Apiaries)
            {
                double count = apiary.Sampled.Count + (double)apiary.Unsampled;
                sum += count * apiary.Mean.PerBee;
                colonies += count;
            }

            return MiteLevel.FromPerBee(sum / colonies);
        }
    }

    /// <summary>Expected number of colonies over a line in the whole operation.</summary>
    /// <param name="line">A line on the same scale as the level.</param>
    public double ExpectedOver(MiteLevel line)
    {
        double sum = 0d;
        foreach (ApiaryPosterior apiary in Apiaries)
            sum += apiary.ExpectedSampledOver(line) + apiary.ExpectedUnsampledOver(line);
        return sum;
    }

    /// <summary>The posterior of an operation.</summary>
    /// <param name="apiaries">At least one apiary with a sampled colony; names are unique.</param>
    /// <param name="prior">What is taken for granted; its mean level is that of the operation's centre. By default <see cref="ApiaryPrior.Weak"/>.</param>
    /// <exception cref="ArgumentException">No colony of any apiary was sampled, or a name occurs twice.</exception>
    public static OperationPosterior FromJars(IReadOnlyList<ApiaryJars> apiaries, ApiaryPrior? prior = null)
    {
        ArgumentNullException.ThrowIfNull(apiaries);
        Check(apiaries);
        ApiaryPrior taken = prior is { LogSpread: > 0d } given ? given : ApiaryPrior.Weak;
        double centre = Math.Log(taken.Median.PerBee);
        double bound = Math.Sqrt((taken.LogSpread * taken.LogSpread) + (4d * BetweenApiariesScale * BetweenApiariesScale));

        int count = apiaries.Count;
        PooledExposure[][] pooled = new PooledExposure[count][];
        ApiaryLikelihood[] known = new ApiaryLikelihood[count];
        ApiaryLikelihood[] full = new ApiaryLikelihood[count];
        double[] starts = new double[count];
        for (int i = 0; i < count; i++)
        {
            pooled[i] = ApiaryPosterior.Pool([.. apiaries[i].Sampled]);
            known[i] = new(ApiaryPosterior.Known(pooled[i]));
            full[i] = new(pooled[i]);
            starts[i] = pooled[i].Length == 0 ? centre : ApiaryPosterior.Start(pooled[i]);
        }

        double LogSpreadPrior(double spread) => -0.5 * spread * spread / taken.SpreadScale / taken.SpreadScale;
        SpreadRule rule = FindRule(known, starts, centre, bound, LogSpreadPrior);
        var between = new NormalPool.Prior(centre, taken.LogSpread, BetweenApiariesScale, MeanPeak.Lowest, MeanPeak.Highest);
        NormalPool[] pools = new NormalPool[SpreadRule.Count];
        for (int c = 0; c < SpreadRule.Count; c++)
        {
            LikelihoodRow[] rows = new LikelihoodRow[count];
            for (int i = 0; i < count; i++)
            {
                ApiaryLikelihood likelihood = full[i];
                likelihood.SetSpread(rule.Nodes[c]);
                rows[i] = LikelihoodRow.Of(likelihood.Log, centre, bound, starts[i], MeanPeak.Lowest, MeanPeak.Highest);
            }

            pools[c] = new(rows, between, centre);
        }

        ApiaryPosterior[] posteriors = new ApiaryPosterior[count];
        bool identified = known.Any(apiary => apiary.Count >= 2) && pooled.Any(apiary => apiary.Any(colony => colony.Mites > 0));
        for (int i = 0; i < count; i++)
        {
            var mixtures = Array.ConvertAll(pools, pool => pool.Without(i));
            double LogPrior(int c, double logMean) => LogSpreadPrior(rule.Nodes[c]) + LogDensity(mixtures[c], logMean);
            ApiaryGrid grid = new(full[i], rule, LogPrior, starts[i]);
            posteriors[i] = ApiaryPosterior.FromGrid(grid, [.. apiaries[i].Sampled], apiaries[i].Unsampled, identified);
        }

        return new(posteriors, [.. apiaries.Select(apiary => apiary.Apiary)], MeanBetween(rule, pools, LogSpreadPrior));
    }

    private static void Check(IReadOnlyList<ApiaryJars> apiaries)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        bool any = false;
        foreach (ApiaryJars apiary in apiaries)
        {
            if (!names.Add(apiary.Apiary))
                throw new ArgumentException($"Apiary {apiary.Apiary} occurs twice: put all its colonies into one entry.", nameof(apiaries));
            if (apiary.Sampled.Count > 0)
                ApiaryPosterior.CheckColonies(apiary.Sampled, apiary.Unsampled);
            any |= apiary.Sampled.Count > 0;
        }

        if (!any)
            throw new ArgumentException("Nothing can be said about an operation before a colony was sampled: take jars in at least one apiary.", nameof(apiaries));
    }

    private static SpreadRule FindRule(ApiaryLikelihood[] known, double[] starts, double centre, double bound, Func<double, double> logSpreadPrior)
    {
        double[] at = [.. starts];
        return SpreadRule.Find(
            spread =>
            {
                double sum = logSpreadPrior(spread);
                for (int i = 0; i < known.Length; i++)
                {
                    ApiaryLikelihood likelihood = known[i];
                    likelihood.SetSpread(spread);
                    double Density(double a) => likelihood.Log(a) - (0.5 * (a - centre) * (a - centre) / bound / bound);
                    at[i] = MeanPeak.Find(Density, at[i], 0.25);
                    sum += Density(at[i]);
                }

                return sum;
            },
            0.02, ApiaryPrior.WidestSpread);
    }

    private static double LogDensity((double[] LogWeights, double[] Centres, double[] Widths) mixture, double x)
    {
        double top = double.NegativeInfinity;
        for (int node = 0; node < mixture.Centres.Length; node++)
        {
            double z = (x - mixture.Centres[node]) / mixture.Widths[node];
            top = Math.Max(top, mixture.LogWeights[node] - (0.5 * z * z));
        }

        double sum = 0d;
        for (int node = 0; node < mixture.Centres.Length; node++)
        {
            double z = (x - mixture.Centres[node]) / mixture.Widths[node];
            double below = mixture.LogWeights[node] - (0.5 * z * z) - top;
            if (below > -30d)
                sum += Math.Exp(below) / mixture.Widths[node];
        }

        return top + Math.Log(sum);
    }

    private static double MeanBetween(SpreadRule rule, NormalPool[] pools, Func<double, double> logSpreadPrior)
    {
        double top = pools.Max(pool => pool.LogEvidence);
        double total = 0d;
        double sum = 0d;
        for (int c = 0; c < pools.Length; c++)
        {
            double chance = rule.Weights[c] * Math.Exp(pools[c].LogEvidence - top + logSpreadPrior(rule.Nodes[c]));
            total += chance;
            for (int node = 0; node < pools[c].Weights.Length; node++)
                sum += chance * pools[c].Weights[node] * pools[c].Rule.Nodes[node / NormalPool.Centres];
        }

        return sum / total;
    }
}
