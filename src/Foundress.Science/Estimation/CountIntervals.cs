using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>Intervals for the level in a jar whose bees were all counted, in mites per 100 bees.</summary>
/// <remarks>
/// Formulas and sources: docs/methods/jar.md. Wilson and Clopper-Pearson treat every bee as having a mite or not; a bee can
/// carry several, so the Poisson interval is the natural one, and the other two refuse more mites than bees.
/// </remarks>
public static class CountIntervals
{
    /// <summary>Exact Poisson limits: half the α/2 and 1 - α/2 points of chi-squared with 2y and 2y + 2 degrees of freedom, over the bees.</summary>
    /// <param name="mites">Mites counted, 0 or more.</param>
    /// <param name="bees">Bees counted, 1 or more.</param>
    /// <param name="confidence">Two-sided, above 0 and below 1.</param>
    /// <remarks>F. Garwood 1936, Biometrika 28:437-442.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static LevelInterval ExactPoisson(int mites, int bees, double confidence)
    {
        CheckCounts(mites, bees);
        (double lower, double upper) = PoissonLimits(mites, confidence);
        return Make(lower / bees, upper / bees, confidence, IntervalMethod.ExactPoisson);
    }

    /// <summary>Wilson's score limits, without continuity correction.</summary>
    /// <param name="mites">Mites counted, 0 to <paramref name="bees"/>.</param>
    /// <param name="bees">Bees counted, 1 or more.</param>
    /// <param name="confidence">Two-sided, above 0 and below 1.</param>
    /// <remarks>E. B. Wilson 1927, J. Am. Stat. Assoc. 22:209-212.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static LevelInterval Wilson(int mites, int bees, double confidence)
    {
        CheckProportion(mites, bees);
        double z = -NormalDistribution.Quantile(Tail(confidence));
        double square = z * z;
        double count = mites;
        double half = z * Math.Sqrt((count * (bees - count) / bees) + (square / 4d));
        double upper = mites == bees ? 1d : (count + (square / 2d) + half) / (bees + square);

        // The two limits are the roots of one quadratic: the lower one from their product loses no digits at low counts.
        double lower = count * count / (bees * (bees + square) * upper);
        return Make(lower, upper, confidence, IntervalMethod.Wilson);
    }

    /// <summary>Exact limits of a proportion, from beta quantiles.</summary>
    /// <param name="mites">Mites counted, 0 to <paramref name="bees"/>.</param>
    /// <param name="bees">Bees counted, 1 or more.</param>
    /// <param name="confidence">Two-sided, above 0 and below 1.</param>
    /// <remarks>C. J. Clopper &amp; E. S. Pearson 1934, Biometrika 26:404-413.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static LevelInterval ClopperPearson(int mites, int bees, double confidence)
    {
        CheckProportion(mites, bees);
        (double lower, double upper) = ShareLimits(mites, bees, confidence);
        return Make(lower, upper, confidence, IntervalMethod.ClopperPearson);
    }

    /// <summary>Exact limits of the mean of a Poisson count (Garwood 1936).</summary>
    internal static (double Lower, double Upper) PoissonLimits(int count, double confidence)
    {
        double tail = Tail(confidence);
        return (count == 0 ? 0d : GammaFunctions.InverseLower(count, tail), GammaFunctions.InverseUpper(count + 1d, tail));
    }

    /// <summary>Exact limits of a share (Clopper and Pearson 1934).</summary>
    internal static (double Lower, double Upper) ShareLimits(int hits, int outOf, double confidence)
    {
        double tail = Tail(confidence);
        return (
            hits == 0 ? 0d : BetaFunctions.InverseLower(hits, outOf - hits + 1d, tail),
            hits == outOf ? 1d : BetaFunctions.InverseUpper(hits + 1d, outOf - hits, tail));
    }

    internal static double Tail(double confidence) =>
        confidence is > 0d and < 1d
            ? (1d - confidence) / 2d
            : throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence lies above 0 and below 1, for example 0.95.");

    private static LevelInterval Make(double lower, double upper, double confidence, IntervalMethod method) =>
        new(MiteLevel.FromPerBee(lower), MiteLevel.FromPerBee(upper), confidence, method);

    private static void CheckCounts(int mites, int bees)
    {
        if (mites < 0)
            throw new ArgumentOutOfRangeException(nameof(mites), mites, "The number of mites counted is 0 or more.");
        if (bees < 1)
            throw new ArgumentOutOfRangeException(nameof(bees), bees, "A jar holds at least one bee: give the number of bees counted.");
    }

    private static void CheckProportion(int mites, int bees)
    {
        CheckCounts(mites, bees);
        if (mites > bees)
        {
            throw new ArgumentOutOfRangeException(
                nameof(mites), mites, $"This interval treats mites as a share of bees, so it cannot hold {mites} mites on {bees} bees: use the exact Poisson interval.");
        }
    }
}
