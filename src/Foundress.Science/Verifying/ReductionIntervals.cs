using Foundress.Science.Numerics;

namespace Foundress.Science.Verifying;

/// <summary>
/// Intervals of the reduction between two groups of counts by the methods of worm egg count reduction tests, for comparison with
/// <see cref="EfficacyOf"/>. They take every count as on the same number of bees, and know nothing of jars without a mite.
/// </summary>
/// <remarks>Formulas and sources: docs/methods/efficacy.md. They fail where there is no mite after: the exception says so.</remarks>
public static class ReductionIntervals
{
    /// <summary>Levecke's delta variance with a gamma distribution of the ratio of means; before and after in the same colonies.</summary>
    /// <exception cref="ArgumentException">The counts do not allow it; the message says why.</exception>
    public static EfficacyInterval GammaPaired(ReadOnlySpan<double> before, ReadOnlySpan<double> after, double confidence) =>
        Gamma(CountMoments.Paired(before, after), confidence);

    /// <summary>The same for different colonies.</summary>
    /// <exception cref="ArgumentException">The counts do not allow it; the message says why.</exception>
    public static EfficacyInterval GammaUnpaired(ReadOnlySpan<double> before, ReadOnlySpan<double> after, double confidence) =>
        Gamma(CountMoments.Unpaired(before, after), confidence);

    /// <summary>Levecke's delta variance with Student's distribution of the efficacy itself; before and after in the same colonies.</summary>
    /// <exception cref="ArgumentException">The counts do not allow it; the message says why.</exception>
    public static EfficacyInterval NormalPaired(ReadOnlySpan<double> before, ReadOnlySpan<double> after, double confidence)
    {
        CountMoments moments = CountMoments.Paired(before, after);
        double reach = Student(confidence, moments.Freedom) * moments.Ratio * Math.Sqrt(moments.RelativeVariance);
        return new(1d - moments.Ratio - reach, 1d - moments.Ratio + reach, confidence);
    }

    /// <summary>Coles et al. 1992, Vet Parasitol 44:35-44: Student's distribution of the logarithm of the ratio; different colonies.</summary>
    /// <exception cref="ArgumentException">The counts do not allow it; the message says why.</exception>
    public static EfficacyInterval ColesUnpaired(ReadOnlySpan<double> before, ReadOnlySpan<double> after, double confidence) =>
        OnLogs(CountMoments.Unpaired(before, after), before.Length + after.Length - 2, confidence);

    /// <summary>The same with the covariance, for the same colonies (Lyndal-Murphy et al. 2014, method B).</summary>
    /// <exception cref="ArgumentException">The counts do not allow it; the message says why.</exception>
    public static EfficacyInterval ColesPaired(ReadOnlySpan<double> before, ReadOnlySpan<double> after, double confidence) =>
        OnLogs(CountMoments.Paired(before, after), before.Length - 1, confidence);

    /// <summary>Dobson's binomial: the mites left of those counted before. Works without a mite after, but takes colonies as all alike.</summary>
    /// <param name="before">All mites counted before, above 0.</param>
    /// <param name="after">All mites counted after, not more than before.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static EfficacyInterval Binomial(int before, int after, double confidence)
    {
        if (before < 1)
            throw new ArgumentOutOfRangeException(nameof(before), before, "There must have been a mite before.");
        if (after < 0 || after > before)
            throw new ArgumentOutOfRangeException(nameof(after), after, "The mites after are 0 or more, and not more than before.");
        double tail = Estimation.CountIntervals.Tail(confidence);
        double a = after + 1d;
        double b = before - after + 1d;
        return new(1d - BetaFunctions.InverseUpper(a, b, tail), 1d - BetaFunctions.InverseLower(a, b, tail), confidence);
    }

    private static EfficacyInterval Gamma(CountMoments moments, double confidence)
    {
        double tail = Estimation.CountIntervals.Tail(confidence);
        double shape = 1d / moments.RelativeVariance;
        double scale = moments.Ratio * moments.RelativeVariance;
        return new(1d - (scale * GammaFunctions.InverseUpper(shape, tail)), 1d - (scale * GammaFunctions.InverseLower(shape, tail)), confidence);
    }

    private static EfficacyInterval OnLogs(CountMoments moments, int freedom, double confidence)
    {
        double reach = Student(confidence, freedom) * Math.Sqrt(moments.RelativeVariance);
        return new(1d - (moments.Ratio * Math.Exp(reach)), 1d - (moments.Ratio * Math.Exp(-reach)), confidence);
    }

    private static double Student(double confidence, int freedom) => StudentDistribution.Quantile(1d - Estimation.CountIntervals.Tail(confidence), freedom);
}
