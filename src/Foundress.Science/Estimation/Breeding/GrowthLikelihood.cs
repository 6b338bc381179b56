namespace Foundress.Science.Estimation;

/// <summary>
/// The likelihood of a colony's growth. Given all mites of a stretch, how they fall among its visits is multinomial with chances
/// in proportion to exposure times exp(growth · day): the level at the start of the stretch drops out exactly.
/// </summary>
internal sealed class GrowthLikelihood
{
    private readonly List<(double[] Days, double[] Mites, double[] LogExposures)> _stretches = [];

    /// <param name="course">The jars.</param>
    /// <param name="visitSpread">Standard deviation of the logarithm of a visit's level around the course, besides chance.</param>
    public GrowthLikelihood(ColonyCourse course, double visitSpread)
    {
        foreach (IReadOnlyList<CourseVisit> stretch in course.Stretches)
        {
            if (stretch.Count < 2)
                continue;
            double[] days = new double[stretch.Count];
            double[] mites = new double[stretch.Count];
            double[] logExposures = new double[stretch.Count];
            double total = 0d;
            for (int i = 0; i < stretch.Count; i++)
            {
                // An uncertain exposure adds s² to the variance 1/y of the log level: a count of y/(1 + y s²) over an
                // exposure cut alike says as much.
                PooledExposure pooled = PooledExposure.Of(stretch[i].Jars);
                double cut = 1d / (1d + (pooled.Mites * ((pooled.LogSpread * pooled.LogSpread) + (visitSpread * visitSpread))));
                days[i] = stretch[i].Day - stretch[0].Day;
                mites[i] = pooled.Mites * cut;
                logExposures[i] = Math.Log(pooled.Median * cut);
                total += mites[i];
            }

            if (total == 0d || days.Max() == days.Min())
                continue;
            _stretches.Add((days, mites, logExposures));
        }
    }

    /// <summary>True when the jars say anything about growth: a stretch has mites and visits on two days.</summary>
    public bool Informs => _stretches.Count > 0;

    /// <summary>ln likelihood at a growth per day.</summary>
    public double Log(double growth)
    {
        double sum = 0d;
        foreach ((double[] days, double[] mites, double[] logExposures) in _stretches)
        {
            double top = double.NegativeInfinity;
            for (int i = 0; i < days.Length; i++)
                top = Math.Max(top, logExposures[i] + (growth * days[i]));
            double shares = 0d;
            double total = 0d;
            for (int i = 0; i < days.Length; i++)
            {
                shares += Math.Exp(logExposures[i] + (growth * days[i]) - top);
                total += mites[i];
                sum += mites[i] * (logExposures[i] + (growth * days[i]));
            }

            sum -= total * (top + Math.Log(shares));
        }

        return sum;
    }
}
