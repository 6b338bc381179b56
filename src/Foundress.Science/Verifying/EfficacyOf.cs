using Foundress.Science.Estimation;

namespace Foundress.Science.Verifying;

/// <summary>The efficacy of a control from jars before and after it, with its uncertainty.</summary>
/// <remarks>Formulas and limits: docs/methods/efficacy.md. Jars see mites on adult bees only: wait until those under cappings have come out.</remarks>
public static class EfficacyOf
{
    /// <summary>One colony, uncorrected: 1 - the ratio of two gamma posteriors, (n0/n1)·((y1+½)/(y0+½))·F(2y1+1, 2y0+1) with counted bees.</summary>
    /// <param name="pair">Its jars.</param>
    public static EfficacyOutcome Colony(JarPair pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return pair.MitesBefore == 0
            ? EfficacyOutcome.Refused(EfficacyRefusal.NoMitesBefore)
            : EfficacyOutcome.Of(new(new ChangeLaw(LevelChange.OfColony(pair.Before, pair.After, 1d))));
    }

    /// <summary>A group of colonies, uncorrected: the mean share of the mites taken away, with a spread between colonies.</summary>
    /// <param name="treated">Their jars; colonies without a mite before and after say nothing.</param>
    /// <param name="prior">Null for the default.</param>
    /// <exception cref="ArgumentOutOfRangeException">The prior's scale is not from 0 to 3.</exception>
    public static EfficacyOutcome Group(IReadOnlyList<JarPair> treated, EfficacyPrior? prior = null) =>
        TreatedRefusal(treated) is { } refusal ? EfficacyOutcome.Refused(refusal) : EfficacyOutcome.Of(new(Law(treated, prior)));

    /// <summary>A group against untreated colonies beside it, the interval of Henderson and Tilton's efficacy: 1 - ratio of treated over ratio of untreated.</summary>
    /// <param name="treated">The treated colonies.</param>
    /// <param name="controls">The untreated colonies.</param>
    /// <param name="prior">Null for the default.</param>
    /// <exception cref="ArgumentOutOfRangeException">The prior's scale is not from 0 to 3.</exception>
    public static EfficacyOutcome AgainstControls(IReadOnlyList<JarPair> treated, IReadOnlyList<JarPair> controls, EfficacyPrior? prior = null)
    {
        ArgumentNullException.ThrowIfNull(controls);
        if (TreatedRefusal(treated) is { } refusal)
            return EfficacyOutcome.Refused(refusal);
        if (controls.Count == 0)
            return EfficacyOutcome.Refused(EfficacyRefusal.NoControlPairs);
        if (controls.Sum(pair => pair.MitesBefore) == 0)
            return EfficacyOutcome.Refused(EfficacyRefusal.NoMitesInControlsBefore);
        if (controls.Sum(pair => pair.MitesAfter) == 0)
            return EfficacyOutcome.Refused(EfficacyRefusal.NoMitesInControlsAfter);
        return EfficacyOutcome.Of(new(Law(treated, prior).Over(Law(controls, prior))));
    }

    /// <summary>A group against what a forecast says would have been, had nothing been done.</summary>
    /// <param name="treated">The treated colonies.</param>
    /// <param name="growth">Median of the level after over the level before without the control, above 0.</param>
    /// <param name="logSpread">Standard deviation of its natural logarithm, 0 to 2.</param>
    /// <param name="prior">Null for the default.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static EfficacyOutcome AgainstForecast(IReadOnlyList<JarPair> treated, double growth, double logSpread, EfficacyPrior? prior = null)
    {
        if (!(growth > 0d) || !double.IsFinite(growth))
            throw new ArgumentOutOfRangeException(nameof(growth), growth, "The growth without the control is a finite number above 0: 1 for a level that stays.");
        if (logSpread is not (>= 0d and <= 2d))
            throw new ArgumentOutOfRangeException(nameof(logSpread), logSpread, "The log spread of a forecast lies between 0 and 2.");
        return TreatedRefusal(treated) is { } refusal
            ? EfficacyOutcome.Refused(refusal)
            : EfficacyOutcome.Of(new(Law(treated, prior).Over(growth, logSpread)));
    }

    internal static EfficacyPosterior OfCounts(IReadOnlyList<PairCounts> counts, EfficacyPrior? prior) => new(SharedRatio.Of(counts, Checked(prior)));

    private static GridLaw Law(IReadOnlyList<JarPair> pairs, EfficacyPrior? prior) => SharedRatio.Of([.. pairs.Select(pair => pair.Counts)], Checked(prior));

    private static EfficacyPrior Checked(EfficacyPrior? prior)
    {
        EfficacyPrior taken = prior ?? EfficacyPrior.Default;
        return taken.SpreadScale is >= 0d and <= 3d
            ? taken
            : throw new ArgumentOutOfRangeException(nameof(prior), taken.SpreadScale, "The scale of the spread between colonies lies between 0 and 3.");
    }

    private static EfficacyRefusal? TreatedRefusal(IReadOnlyList<JarPair> treated)
    {
        ArgumentNullException.ThrowIfNull(treated);
        if (treated.Count == 0)
            return EfficacyRefusal.NoPairs;
        return treated.Sum(pair => pair.MitesBefore) == 0 ? EfficacyRefusal.NoMitesBefore : null;
    }
}
