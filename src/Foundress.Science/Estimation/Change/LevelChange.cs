using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// How the level changed between two rounds: the posterior of the later level over the earlier one. Above 1 it grew.
/// Immutable.
/// </summary>
/// <remarks>Formulas and limits: docs/methods/apiary.md. Both rounds must be on the scale of one counting method.</remarks>
public abstract class LevelChange
{
    private const double WidestLog = 60d;

    private protected LevelChange(double days)
    {
        if (!(days > 0d) || !double.IsFinite(days))
            throw new ArgumentOutOfRangeException(nameof(days), days, "The later round comes a finite number of days, above 0, after the earlier one.");
        Days = days;
    }

    /// <summary>Days between the rounds, above 0.</summary>
    public double Days { get; }

    /// <summary>The ratio of later to earlier level that is as likely to be exceeded as not.</summary>
    public double MedianRatio => RatioQuantile(0.5);

    /// <summary>The chance that the later level is the higher one.</summary>
    public Chance ChanceGrown => ChanceRatioOver(1d);

    /// <summary>Growth of the natural logarithm of the level per day, as likely to be exceeded as not: 0.021 is 2.1 % a day.</summary>
    public double MedianGrowthPerDay => Math.Log(MedianRatio) / Days;

    /// <summary>The change of one colony from its jars in two rounds.</summary>
    /// <param name="earlier">At least one jar of the earlier round.</param>
    /// <param name="later">At least one jar of the later round.</param>
    /// <param name="days">Days between the rounds, above 0.</param>
    /// <remarks>
    /// With counted bees the ratio is (n0/n1) · ((y1 + ½)/(y0 + ½)) · F(2 y1 + 1, 2 y0 + 1), the ratio of two gamma posteriors
    /// with Jeffreys' prior. Uncertain bees are averaged over on a fixed grid.
    /// </remarks>
    /// <exception cref="ArgumentException">A round has no jar.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="days"/> is out of its range.</exception>
    public static LevelChange OfColony(IReadOnlyList<JarCount> earlier, IReadOnlyList<JarCount> later, double days)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        ArgumentNullException.ThrowIfNull(later);
        if (earlier.Count == 0)
            throw new ArgumentException("A change needs at least one jar of the earlier round.", nameof(earlier));
        if (later.Count == 0)
            throw new ArgumentException("A change needs at least one jar of the later round.", nameof(later));
        return new ColonyChange(PooledExposure.Of(earlier), PooledExposure.Of(later), days);
    }

    /// <summary>The change of the mean level of an apiary.</summary>
    /// <param name="earlier">The earlier round.</param>
    /// <param name="later">The later round.</param>
    /// <param name="days">Days between the rounds, above 0.</param>
    /// <remarks>
    /// The rounds are taken as independent. Where the same colonies were sampled twice the interval is wider than need be:
    /// a colony that is high stays high. <see cref="GrowthRanking"/> compares each colony with itself.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="days"/> is out of its range.</exception>
    public static LevelChange OfApiary(ApiaryPosterior earlier, ApiaryPosterior later, double days)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        ArgumentNullException.ThrowIfNull(later);
        return new ApiaryChange(earlier, later, days);
    }

    /// <summary>The chance that the later level is more than a multiple of the earlier one.</summary>
    /// <param name="multiple">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="multiple"/> is not a finite number above 0.</exception>
    public Chance ChanceRatioOver(double multiple) => multiple > 0d && double.IsFinite(multiple)
        ? Chance.Of(Math.Clamp(Upper(multiple), 0d, 1d))
        : throw new ArgumentOutOfRangeException(nameof(multiple), multiple, "A ratio of two levels is a finite number above 0.");

    /// <summary>The ratio with a given chance of being lower.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public double RatioQuantile(double p) => p is > 0d and < 1d
        ? Math.Exp(SolveLog(p))
        : throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile is asked for a chance above 0 and below 1.");

    /// <summary>The equal-tailed interval of the ratio.</summary>
    /// <param name="confidence">Above 0 and below 1, for example 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public ChangeInterval RatioInterval(double confidence)
    {
        double tail = CountIntervals.Tail(confidence);
        return new(RatioQuantile(tail), RatioQuantile(1d - tail), confidence);
    }

    /// <summary>The equal-tailed interval of the growth of the natural logarithm of the level per day.</summary>
    /// <param name="confidence">Above 0 and below 1, for example 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public ChangeInterval GrowthPerDayInterval(double confidence)
    {
        ChangeInterval ratio = RatioInterval(confidence);
        return new(Math.Log(ratio.Lower) / Days, Math.Log(ratio.Upper) / Days, confidence);
    }

    /// <summary>A guess of the median of ln ratio.</summary>
    private protected abstract double Guess { get; }

    /// <summary>The chance of a ratio over a multiple above 0.</summary>
    private protected abstract double Upper(double multiple);

    // False position on the normal scale, where the curve is nearly straight, kept inside a bracket by halving the far side's pull.
    private double SolveLog(double p)
    {
        double target = NormalDistribution.Quantile(p);
        double Gap(double logRatio)
        {
            double over = Upper(Math.Exp(logRatio));
            return (over > 0.5 ? NormalDistribution.Quantile(Math.Max(1e-300, 1d - over)) : -NormalDistribution.Quantile(Math.Max(1e-300, over))) - target;
        }

        double reach = 0.5;
        double low = Guess;
        double high = low;
        double lowGap = Gap(low);
        double highGap = lowGap;
        while (lowGap > 0d && low > -WidestLog)
        {
            (high, highGap) = (low, lowGap);
            low = Math.Max(-WidestLog, low - reach);
            lowGap = Gap(low);
            reach *= 2d;
        }

        reach = 0.5;
        while (highGap < 0d && high < WidestLog)
        {
            (low, lowGap) = (high, highGap);
            high = Math.Min(WidestLog, high + reach);
            highGap = Gap(high);
            reach *= 2d;
        }

        int side = 0;
        for (int step = 0; step < 100 && high - low > 1e-11; step++)
        {
            double middle = highGap > lowGap ? high - (highGap * (high - low) / (highGap - lowGap)) : 0.5 * (low + high);
            if (!(middle > low && middle < high))
                middle = 0.5 * (low + high);
            double gap = Gap(middle);
            if (Math.Abs(gap) < 1e-12)
                return middle;
            if (gap > 0d)
            {
                (high, highGap) = (middle, gap);
                if (side == 1)
                    lowGap *= 0.5;
                side = 1;
            }
            else
            {
                (low, lowGap) = (middle, gap);
                if (side == -1)
                    highGap *= 0.5;
                side = -1;
            }
        }

        return 0.5 * (low + high);
    }
}
