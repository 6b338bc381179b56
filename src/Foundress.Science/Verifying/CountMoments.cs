namespace Foundress.Science.Verifying;

/// <summary>Ratio of two mean counts and the delta-method variance of its logarithm.</summary>
/// <param name="Ratio">Mean after over mean before, above 0.</param>
/// <param name="RelativeVariance">Variance of the ratio over its square, above 0.</param>
/// <param name="Freedom">Degrees of freedom of both groups together.</param>
internal readonly record struct CountMoments(double Ratio, double RelativeVariance, int Freedom)
{
    public static CountMoments Unpaired(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        var (meanBefore, varianceBefore) = Moments(before, nameof(before));
        var (meanAfter, varianceAfter) = Moments(after, nameof(after));
        double relative = (varianceBefore / (before.Length * meanBefore * meanBefore)) + (varianceAfter / (after.Length * meanAfter * meanAfter));
        return Checked(new(meanAfter / meanBefore, relative, before.Length + after.Length - 2));
    }

    public static CountMoments Paired(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        if (before.Length != after.Length)
            throw new ArgumentException($"Each colony needs a count before and one after; there are {before.Length} and {after.Length}.", nameof(after));
        CountMoments apart = Unpaired(before, after);
        var (meanBefore, _) = Moments(before, nameof(before));
        var (meanAfter, _) = Moments(after, nameof(after));
        double covariance = 0d;
        for (int i = 0; i < before.Length; i++)
            covariance += (before[i] - meanBefore) * (after[i] - meanAfter);
        covariance /= before.Length - 1;
        return Checked(apart with { RelativeVariance = apart.RelativeVariance - (2d * covariance / (before.Length * meanBefore * meanAfter)) });
    }

    private static CountMoments Checked(CountMoments moments) => moments.RelativeVariance > 0d
        ? moments
        : throw new ArgumentException("The counts do not vary, so this method gives no interval.");

    private static (double Mean, double Variance) Moments(ReadOnlySpan<double> counts, string name)
    {
        if (counts.Length < 2)
            throw new ArgumentException($"At least two counts are needed, not {counts.Length}.", name);
        double mean = 0d;
        foreach (double count in counts)
        {
            if (!(count >= 0d) || !double.IsFinite(count))
                throw new ArgumentException($"{count} is not a count of mites: a finite number, 0 or more.", name);
            mean += count / counts.Length;
        }

        if (mean == 0d)
            throw new ArgumentException("No mite was counted in this group, so the ratio is undefined.", name);
        double variance = 0d;
        foreach (double count in counts)
            variance += (count - mean) * (count - mean) / (counts.Length - 1);
        return (mean, variance);
    }
}
