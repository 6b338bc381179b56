namespace Foundress.Science.Estimation;

/// <summary>How many mites were on the bees and what share of those still there each pass takes off. Immutable.</summary>
/// <remarks>
/// Every mite is taken to come off in each pass with the same chance, whatever came off before. Mites that cling harder
/// than others break this: the estimate is then too low. Formulas and sources: docs/methods/removal.md.
/// </remarks>
public sealed record RemovalEstimate
{
    internal RemovalEstimate(PassCounts counts, double mites, double standardError) =>
        (Counts, Mites, StandardError) = (counts, mites, standardError);

    /// <summary>The counts it was made from.</summary>
    public PassCounts Counts { get; }

    /// <summary>Estimated mites that were on the bees before the first pass: a real number, at least the mites counted.</summary>
    public double Mites { get; }

    /// <summary>Large-sample standard error of <see cref="Mites"/> (Zippin 1958); at small counts the interval is the better guide.</summary>
    public double StandardError { get; }

    /// <summary>Share of the mites still on the bees that one pass takes off, above 0 and at most 1.</summary>
    public double RecoveryOfPass => Counts.Summed / ((Counts.Passes * Mites) - Counts.Earlier);

    /// <summary>Share of all mites that the passes together took off, above 0 and at most 1: the recovery of the summed count.</summary>
    public double RecoveryOfAll => Counts.Summed / Mites;

    /// <summary>Mites expected to be on the bees still.</summary>
    public double Left => Mites - Counts.Summed;

    /// <summary>The profile-likelihood interval of the mites that were on the bees.</summary>
    /// <param name="confidence">Two-sided, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public RemovalInterval Interval(double confidence) => new RemovalLikelihood(Counts).Interval(confidence);
}
