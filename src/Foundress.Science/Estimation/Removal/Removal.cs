namespace Foundress.Science.Estimation;

/// <summary>What repeat passes over the same bees say about the mites that were on them: an estimate, or why there is none. Immutable.</summary>
/// <remarks>Formulas, sources and limits: docs/methods/removal.md.</remarks>
public sealed record Removal
{
    private Removal(PassCounts counts, RemovalEstimate? estimate, RemovalRefusal? refusal) => (Counts, Estimate, Refusal) = (counts, estimate, refusal);

    /// <summary>The counts.</summary>
    public PassCounts Counts { get; }

    /// <summary>The estimate; none when it is refused, and then only <see cref="PassCounts.Summed"/> is known.</summary>
    public RemovalEstimate? Estimate { get; }

    /// <summary>Why there is no estimate; none when there is one.</summary>
    public RemovalRefusal? Refusal { get; }

    /// <summary>
    /// The estimate: two passes in closed form c1² / (c1 - c2), more by maximum likelihood over real numbers of mites.
    /// </summary>
    /// <remarks>
    /// Seber &amp; Le Cren 1967, J. Anim. Ecol. 36:631-643; Zippin 1958, J. Wildl. Manage. 22:82-90; Moran 1951, Biometrika 38:307-311. An
    /// estimate is refused unless the counts decline (Seber &amp; Whale 1970, Biometrics 26:393-400).
    /// </remarks>
    public static Removal From(PassCounts counts)
    {
        ArgumentNullException.ThrowIfNull(counts);
        if (counts.Passes == 1)
            return new(counts, null, RemovalRefusal.OnePass);
        if (counts.Summed == 0)
            return new(counts, null, RemovalRefusal.NoMites);
        if (counts.Decline <= 0)
            return new(counts, null, RemovalRefusal.NoDecline);
        double mites = counts.Passes == 2 ? TwoPasses(counts) : new RemovalLikelihood(counts).Peak();
        return new(counts, new RemovalEstimate(counts, mites, StandardError(counts, mites)), null);
    }

    private static double TwoPasses(PassCounts counts)
    {
        double first = counts.Mites[0];
        return first * first / (first - counts.Mites[1]);
    }

    // Zippin's large-sample variance N (N - T) T / (T² - N (N - T) (k p)² / (1 - p)); with two passes and the closed form it is
    // c1² c2² (c1 + c2) / (c1 - c2)⁴.
    private static double StandardError(PassCounts counts, double mites)
    {
        double summed = counts.Summed;
        double left = mites * (mites - summed);
        double share = summed / ((counts.Passes * mites) - counts.Earlier);
        if (left <= 0d || share >= 1d)
            return 0d;
        double effort = counts.Passes * share;
        return Math.Sqrt(left * summed / ((summed * summed) - (left * effort * effort / (1d - share))));
    }
}
