namespace Foundress.Science.Estimation;

/// <summary>
/// Colonies ranked for breeding, slowest growth of mites first. Growth is read between controls, drawn towards the mean of the
/// colonies, and each colony gets the chance of truly being in the best fifth; a ranking that is mostly chance says so.
/// Immutable.
/// </summary>
/// <remarks>
/// Formulas and limits: docs/methods/apiary.md. The model sees mites on adult bees alone: brood breaks, drift and robbing also
/// change them, so colonies should share a yard and a season.
/// </remarks>
public sealed class GrowthRanking
{
    /// <summary>A ranking is noise when less than this share of the colonies picked as the best fifth can be expected to belong there.</summary>
    public const double LeastHitRate = 0.5;

    /// <summary>The smallest number of colonies that can be ranked by fifths.</summary>
    public const int FewestColonies = 5;

    private const int Nodes = 280;

    private GrowthRanking(ColonyGrowth[] colonies, double mean, double between)
    {
        Colonies = colonies;
        MeanGrowth = mean;
        BetweenColonies = between;
        double centre = colonies.Average(colony => colony.Mean);
        double told = colonies.Average(colony => (colony.Mean - centre) * (colony.Mean - centre));
        Reliability = told / (told + colonies.Average(colony => colony.StandardDeviation * colony.StandardDeviation));
        PickSize = BestFifth(colonies.Length);
        HitRate = colonies.OrderByDescending(colony => colony.ChanceInBestFifth.Value).Take(PickSize).Average(colony => colony.ChanceInBestFifth.Value);
    }

    /// <summary>The colonies, lowest mean growth first; equal ones in the order of their names.</summary>
    public IReadOnlyList<ColonyGrowth> Colonies { get; }

    /// <summary>Posterior mean of the colonies' mean growth per day.</summary>
    public double MeanGrowth { get; }

    /// <summary>Posterior mean of the spread of true growth between colonies, per day.</summary>
    public double BetweenColonies { get; }

    /// <summary>Share of the variance of true growth that the ranking tells, 0 to 1: variance of the means over that plus the mean variance around them.</summary>
    public double Reliability { get; }

    /// <summary>Number of colonies in the best fifth, rounded up.</summary>
    public int PickSize { get; }

    /// <summary>Expected share of the colonies with the best chances that truly belong in the best fifth; a blind pick has one fifth.</summary>
    public double HitRate { get; }

    /// <summary>True when picking by this ranking would more often be wrong than right: see <see cref="LeastHitRate"/>.</summary>
    public bool IsNoise => HitRate < LeastHitRate;

    /// <summary>Ranks colonies.</summary>
    /// <param name="courses">At least five colonies; names are unique.</param>
    /// <param name="visitSpread">How far, besides chance, a visit's level strays from a steady course: standard deviation of its logarithm, 0 to 1.</param>
    /// <param name="prior">What is taken for granted; by default <see cref="GrowthPrior.Weak"/>.</param>
    /// <exception cref="ArgumentException">There are too few colonies, or a name occurs twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="visitSpread"/> is out of its range.</exception>
    public static GrowthRanking Of(IReadOnlyList<ColonyCourse> courses, double visitSpread = 0d, GrowthPrior? prior = null)
    {
        ArgumentNullException.ThrowIfNull(courses);
        if (courses.Count < FewestColonies)
            throw new ArgumentException($"A best fifth needs at least {FewestColonies} colonies; there are {courses.Count}.", nameof(courses));
        if (visitSpread is not (>= 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(visitSpread), visitSpread, "The spread of a visit around the course lies between 0 and 1.");
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (ColonyCourse course in courses)
        {
            if (!names.Add(course.Colony))
                throw new ArgumentException($"Colony {course.Colony} occurs twice: put its stretches into one course.", nameof(courses));
        }

        GrowthPrior taken = prior is { CentreSpread: > 0d } given ? given : GrowthPrior.Weak;
        return Rank([.. courses], [.. courses.Select(course => new GrowthLikelihood(course, visitSpread))], taken);
    }

    private static int BestFifth(int colonies) => (colonies + 4) / 5;

    private static GrowthRanking Rank(ColonyCourse[] courses, GrowthLikelihood[] likelihoods, GrowthPrior prior)
    {
        double far = 8d * (prior.CentreSpread + prior.BetweenScale);
        double bound = Math.Sqrt((prior.CentreSpread * prior.CentreSpread) + (4d * prior.BetweenScale * prior.BetweenScale));
        LikelihoodRow[] rows = Array.ConvertAll(likelihoods, own => LikelihoodRow.Of(own.Log, 0d, bound, 0d, -far, far));
        NormalPool pool = new(rows, new(0d, prior.CentreSpread, prior.BetweenScale, -far, far), 0d);

        double mean = 0d;
        double between = 0d;
        for (int node = 0; node < pool.Weights.Length; node++)
        {
            double spread = pool.Rule.Nodes[node / NormalPool.Centres];
            mean += pool.Weights[node] * pool.Centre(node);
            between += pool.Weights[node] * spread;
        }

        (double[][] densities, double[] best, double start, double step) = new BestFifthChances(likelihoods, pool, Nodes).Compute(BestFifth(courses.Length));
        ColonyGrowth[] colonies = new ColonyGrowth[courses.Length];
        for (int i = 0; i < courses.Length; i++)
        {
            colonies[i] = new(
                courses[i].Colony, start, step, densities[i], Chance.Of(Math.Clamp(best[i], 0d, 1d)), likelihoods[i].Informs);
        }

        Array.Sort(colonies, (a, b) => a.Mean != b.Mean ? a.Mean.CompareTo(b.Mean) : string.CompareOrdinal(a.Colony, b.Colony));
        return new(colonies, mean, between);
    }
}
