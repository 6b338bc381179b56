using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Verifying;

namespace Foundress.Book.Proving;

/// <summary>A proof in plain words.</summary>
internal sealed class ProofSentence(CultureInfo culture)
{
    internal string Of(
        ControlAgent? agent, string title, EfficacyOutcome outcome, Correction correction, EfficacyTest? test, Verdict? verdict, int mites, bool tooFew, bool signal, int colonies)
    {
        if (outcome.Efficacy is not { } efficacy)
            return Refused(outcome.Refusal!.Value);
        var interval = efficacy.Interval(test?.Confidence ?? 0.9);
        var on = $"{Say.Count(colonies, "colony", "colonies")}, {By(correction)}";
        var took = efficacy.Median < 0
            ? $"After {title} there were {More(efficacy.Median)} more mites on the bees than before ({Change(interval.Upper)} to {Change(interval.Lower)}; {on})."
            : $"{title} took away {Per(efficacy.Median)} of the mites on the bees ({Per(interval.Lower)} to {Per(interval.Upper)}; {on}).";
        if (agent is null)
            return took + " It is not among the known controls, so there is no target to hold it against.";
        if (test is null || verdict is not { } known)
            return took + " It is not meant to kill by itself, so there is no target to hold it against.";
        if (tooFew)
            return took + $" Only {Say.Count(mites, "mite was", "mites were")} counted before: too few to tell whether it worked.";
        var target = $"{Per(test.Target)} is what it should reach";
        return took + " " + known switch
        {
            Verdict.Worked => $"It worked ({target}).",
            Verdict.Partly => $"It worked in part: more than {Per(test.LowerLimit)}, but less than it should ({target}).",
            Verdict.Failed => signal
                ? $"Its effect was reduced ({target}). Resistance is possible, and so are weather, a use not as planned, or mites that came in; a test of the mites would tell."
                : $"Its effect was reduced ({target}). Look first at what was not as planned before you blame the control.",
            _ => $"That cannot tell whether it worked ({target}).",
        };
    }

    private static string Refused(EfficacyRefusal refusal) => refusal switch
    {
        EfficacyRefusal.NoPairs => "There is no colony with jars before and after yet.",
        EfficacyRefusal.NoMitesBefore => "No mite was counted before, so there was nothing to measure the control by.",
        EfficacyRefusal.NoControlPairs => "No untreated colony has jars before and after.",
        EfficacyRefusal.NoMitesInControlsBefore => "No mite was counted in the untreated colonies before.",
        EfficacyRefusal.NoMitesInControlsAfter => "No mite was counted in the untreated colonies after, so there is nothing to compare with.",
        _ => "No mite fell.",
    };

    private static string By(Correction correction) => correction switch
    {
        Correction.UntreatedColonies => "against the untreated colonies beside them",
        Correction.Forecast => "against what the forecast says would have been",
        _ => "not corrected for growth and natural death",
    };

    private string More(double share) => (-100 * share).ToString("0", culture) + " %";

    private string Change(double share) => share < 0 ? $"{More(share)} more" : $"{Per(share)} fewer";

    private string Per(double share) => share < 0
        ? $"none, {More(share)} more"
        : (100 * share).ToString(share is > 0.985 and < 0.9995 ? "0.0" : "0", culture) + " %";
}
