namespace Foundress.Science.Verifying;

/// <summary>
/// An efficacy as one number, without its uncertainty, by the classical formulas. Shares, not per cent: 0.95 is 95 %; below 0
/// when there were more mites than would have been without the control. Never clamped.
/// </summary>
/// <remarks>Formulas, sources and limits: docs/methods/efficacy.md.</remarks>
public sealed record PointEfficacy
{
    private PointEfficacy(double? share, EfficacyRefusal? refusal) => (Share, Refusal) = (share, refusal);

    /// <summary>The share of the mites killed, at most 1; null when it is undefined.</summary>
    public double? Share { get; }

    /// <summary>Why it is undefined; null when it is not.</summary>
    public EfficacyRefusal? Refusal { get; }

    /// <summary>Plain reduction, 1 - after / before: takes growth and natural death for the control's doing.</summary>
    /// <param name="before">Mean mites, or mites per 100 bees, before; 0 or more.</param>
    /// <param name="after">The same after.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not a finite number.</exception>
    public static PointEfficacy Reduction(double before, double after)
    {
        Check(before, nameof(before));
        Check(after, nameof(after));
        return before == 0d ? Refused(EfficacyRefusal.NoMitesBefore) : Of(1d - (after / before));
    }

    /// <summary>Abbott 1925, J Econ Entomol 18:265-267: 1 - treated / control, both counted after. Groups must have started alike.</summary>
    /// <param name="control">Mean of the untreated after; 0 or more.</param>
    /// <param name="treated">Mean of the treated after.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not a finite number.</exception>
    public static PointEfficacy Abbott(double control, double treated)
    {
        Check(control, nameof(control));
        Check(treated, nameof(treated));
        return control == 0d ? Refused(EfficacyRefusal.NoMitesInControlsAfter) : Of(1d - (treated / control));
    }

    /// <summary>Abbott's formula on shares that died, as Schneider-Orelli wrote it: (treated - control) / (1 - control).</summary>
    /// <param name="treatedDead">Share of the mites that died under the control, 0 to 1.</param>
    /// <param name="controlDead">Share that died untreated, 0 to 1; with 1 nothing was left to kill.</param>
    /// <exception cref="ArgumentOutOfRangeException">A share is not from 0 to 1.</exception>
    public static PointEfficacy AbbottMortality(double treatedDead, double controlDead)
    {
        CheckShare(treatedDead, nameof(treatedDead));
        CheckShare(controlDead, nameof(controlDead));
        return controlDead == 1d ? Refused(EfficacyRefusal.NoMitesInControlsAfter) : Of((treatedDead - controlDead) / (1d - controlDead));
    }

    /// <summary>Henderson &amp; Tilton 1955, J Econ Entomol 48:157-161: 1 - (treated after · control before) / (treated before · control after).</summary>
    /// <param name="treatedBefore">Mean of the treated before; 0 or more.</param>
    /// <param name="treatedAfter">Mean of the treated after.</param>
    /// <param name="controlBefore">Mean of the untreated before.</param>
    /// <param name="controlAfter">Mean of the untreated after.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not a finite number.</exception>
    public static PointEfficacy HendersonTilton(double treatedBefore, double treatedAfter, double controlBefore, double controlAfter)
    {
        Check(treatedBefore, nameof(treatedBefore));
        Check(treatedAfter, nameof(treatedAfter));
        Check(controlBefore, nameof(controlBefore));
        Check(controlAfter, nameof(controlAfter));
        if (treatedBefore == 0d)
            return Refused(EfficacyRefusal.NoMitesBefore);
        if (controlBefore == 0d)
            return Refused(EfficacyRefusal.NoMitesInControlsBefore);
        return controlAfter == 0d ? Refused(EfficacyRefusal.NoMitesInControlsAfter) : Of(1d - (treatedAfter / treatedBefore * (controlBefore / controlAfter)));
    }

    /// <summary>Sun-Shepard: (Mt + Pc) / (1 + Pc), by arithmetic the same as Henderson-Tilton on the same counts.</summary>
    /// <param name="treatedFall">Share by which the treated fell, at most 1; below 0 when they rose.</param>
    /// <param name="controlRise">Share by which the untreated rose, from -1; below 0 when they fell.</param>
    /// <exception cref="ArgumentOutOfRangeException">A share is out of its range.</exception>
    public static PointEfficacy SunShepard(double treatedFall, double controlRise)
    {
        if (!(treatedFall <= 1d) || !double.IsFinite(treatedFall))
            throw new ArgumentOutOfRangeException(nameof(treatedFall), treatedFall, "Mites fall by at most 1, all of them.");
        if (!(controlRise >= -1d) || !double.IsFinite(controlRise))
            throw new ArgumentOutOfRangeException(nameof(controlRise), controlRise, "Mites rise by at least -1, when none is left.");
        return controlRise == -1d ? Refused(EfficacyRefusal.NoMitesInControlsAfter) : Of((treatedFall + controlRise) / (1d + controlRise));
    }

    /// <summary>Mite fall with a follow-up: during / (during + follow-up). The follow-up must kill nearly all that is left.</summary>
    /// <param name="during">Mites that fell while the control was at work; 0 or more.</param>
    /// <param name="followUp">Mites that fell under another, effective control after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not a finite number.</exception>
    public static PointEfficacy MiteFall(double during, double followUp)
    {
        Check(during, nameof(during));
        Check(followUp, nameof(followUp));
        return during + followUp == 0d ? Refused(EfficacyRefusal.NoMitesFell) : Of(during / (during + followUp));
    }

    private static PointEfficacy Of(double share) => new(share, null);

    private static PointEfficacy Refused(EfficacyRefusal refusal) => new(null, refusal);

    private static void Check(double count, string name)
    {
        if (!(count >= 0d) || !double.IsFinite(count))
            throw new ArgumentOutOfRangeException(name, count, "A mean number of mites is a finite number, 0 or more.");
    }

    private static void CheckShare(double share, string name)
    {
        if (share is not (>= 0d and <= 1d))
            throw new ArgumentOutOfRangeException(name, share, "A share that died lies between 0 and 1.");
    }
}
