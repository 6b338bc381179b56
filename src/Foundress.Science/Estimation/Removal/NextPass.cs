namespace Foundress.Science.Estimation;

/// <summary>What one more pass over the same bees may be expected to bring. A planning figure.</summary>
/// <param name="ExpectedMites">Mites the pass is expected to find.</param>
/// <param name="ExpectedLeft">Mites expected on the bees after it.</param>
/// <param name="Now">The interval of the mites there were, as it stands.</param>
/// <param name="After">The interval if the pass finds the expected mites, rounded to a whole number.</param>
public readonly record struct NextPass(double ExpectedMites, double ExpectedLeft, RemovalInterval Now, RemovalInterval After)
{
    /// <summary>What the next pass may bring.</summary>
    /// <param name="estimate">The estimate so far.</param>
    /// <param name="confidence">Confidence of the intervals, above 0 and below 1.</param>
    /// <returns>None after the most passes that are reckoned with.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public static NextPass? Of(RemovalEstimate estimate, double confidence)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        if (estimate.Counts.Passes == PassCounts.MostPasses)
            return null;
        double expected = estimate.RecoveryOfPass * estimate.Left;
        PassCounts longer = estimate.Counts.With((int)Math.Min(PassCounts.MostMites, Math.Round(expected)));
        return new(expected, estimate.Left - expected, estimate.Interval(confidence), new RemovalLikelihood(longer).Interval(confidence));
    }

    /// <summary>
    /// True when the pass is expected to narrow the interval by at least a share of its width and by at least a number of mites,
    /// or to give an upper limit where there is none.
    /// </summary>
    /// <param name="narrowing">Share of the width, above 0 and below 1.</param>
    /// <param name="mites">Mites, 0 or more: narrowing by less changes nothing for the keeper.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public bool IsWorthIt(double narrowing, double mites)
    {
        if (narrowing is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(narrowing), narrowing, "The share by which the interval must narrow lies above 0 and below 1, for example 0.3.");
        if (!(mites >= 0d))
            throw new ArgumentOutOfRangeException(nameof(mites), mites, "The mites by which the interval must narrow number 0 or more.");
        if (After.Width is not double after)
            return false;
        return Now.Width is not double now || (now - after >= narrowing * now && now - after >= mites);
    }
}
