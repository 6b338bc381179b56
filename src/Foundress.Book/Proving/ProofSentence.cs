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
        var (of, by) = (Say.Colonies(colonies), By(correction));
        var took = efficacy.Median < 0
            ? ProvingTexts.FormatMoreAfter(title, More(efficacy.Median), Change(interval.Upper), Change(interval.Lower), of, by)
            : ProvingTexts.FormatTookAway(title, Per(efficacy.Median), Per(interval.Lower), Per(interval.Upper), of, by);
        return took + " " + Judged(agent, test, verdict, mites, tooFew, signal);
    }

    private string Judged(ControlAgent? agent, EfficacyTest? test, Verdict? verdict, int mites, bool tooFew, bool signal)
    {
        if (agent is null)
            return ProvingTexts.NotKnownControl;
        if (test is null || verdict is not { } known)
            return ProvingTexts.NotMeantToKill;
        if (tooFew)
            return Plural.Pick(mites, ProvingTexts.FormatTooFewMites(mites));
        var target = Per(test.Target);
        return known switch
        {
            Verdict.Worked => ProvingTexts.FormatWorked(target),
            Verdict.Partly => ProvingTexts.FormatWorkedInPart(Per(test.LowerLimit), target),
            Verdict.Failed => signal ? ProvingTexts.FormatReducedResistancePossible(target) : ProvingTexts.FormatReduced(target),
            _ => ProvingTexts.FormatCannotTell(target),
        };
    }

    private static string Refused(EfficacyRefusal refusal) => refusal switch
    {
        EfficacyRefusal.NoPairs => ProvingTexts.NoPairs,
        EfficacyRefusal.NoMitesBefore => ProvingTexts.NoMitesBefore,
        EfficacyRefusal.NoControlPairs => ProvingTexts.NoUntreatedPairs,
        EfficacyRefusal.NoMitesInControlsBefore => ProvingTexts.NoMitesInUntreatedBefore,
        EfficacyRefusal.NoMitesInControlsAfter => ProvingTexts.NoMitesInUntreatedAfter,
        _ => ProvingTexts.NoMiteFell,
    };

    private static string By(Correction correction) => correction switch
    {
        Correction.UntreatedColonies => ProvingTexts.ByUntreated,
        Correction.Forecast => ProvingTexts.ByForecast,
        _ => ProvingTexts.Uncorrected,
    };

    private string More(double share) => (-100 * share).ToString("0", culture) + " %";

    private string Change(double share) => share < 0 ? ProvingTexts.FormatShareMore(More(share)) : ProvingTexts.FormatShareFewer(Per(share));

    private string Per(double share) => share < 0
        ? ProvingTexts.FormatNoneButMore(More(share))
        : (100 * share).ToString(share is > 0.985 and < 0.9995 ? "0.0" : "0", culture) + " %";
}
