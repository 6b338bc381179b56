using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Judging;

namespace Foundress.Book.Choosing;

/// <summary>What supers say of a control.</summary>
internal static class SuperReasons
{
    internal static void Find(ControlAgent agent, Situation situation, DateOnly end, Reasons reasons)
    {
        if (agent.IsNonChemical)
            return;
        var ruling = situation.Jurisdiction is { } where ? agent.SupersIn(where) : null;
        if (ruling?.Rule == SuperRule.MayBeOn)
        {
            if (situation.SupersOn != false)
                reasons.Note(ruling.Text ?? ChoosingTexts.SupersAllowed);
            return;
        }

        if (situation.SupersOn is not { } on)
        {
            reasons.Missing(Ground.Supers, ChoosingTexts.SupersUnknown);
            return;
        }

        if (on)
            WithSupersOn(situation, ruling, reasons);
        else
            BeforeSupers(agent, situation, end, reasons);
    }

    private static void WithSupersOn(Situation situation, SuperRuling? ruling, Reasons reasons)
    {
        var off = situation.HarvestOn is { } harvest && harvest >= situation.Start ? ChoosingTexts.FormatSupersComeOff(Say.Day(harvest)) : ChoosingTexts.HarvestFirst;
        if (ruling is null)
            reasons.Missing(Ground.Supers, ChoosingTexts.SupersOnNoCountry, holds: true);
        else if (ruling.Rule == SuperRule.NotOn)
            reasons.Against(Ground.Supers, $"{ChoosingTexts.SupersAreOn} {ruling.Text ?? ChoosingTexts.NotWithSupers} {off}", ruling.Source.Text);
        else
            reasons.Missing(Ground.Supers, $"{ChoosingTexts.SupersRuleUnknown} {ruling.Text}", ruling.Source.Text, holds: true);
    }

    private static void BeforeSupers(ControlAgent agent, Situation situation, DateOnly end, Reasons reasons)
    {
        if (situation.SupersDue is not { } due)
        {
            if (situation.Phase is SeasonPhase.Increase or SeasonPhase.Peak)
                reasons.Missing(Ground.Supers, ChoosingTexts.SupersDueUnknown);
            return;
        }

        if (due < situation.Start)
            return;
        if (end.AddDays((int)(agent.DaysBeforeSupers?.Value ?? 0)) > due)
        {
            reasons.Against(
                Ground.Supers,
                agent.DaysBeforeSupers is { Value: > 0 } wait
                    ? ChoosingTexts.FormatSupersDueBeforeWait(Say.Day(due), Say.Day(end), wait.Value.ToString("0", CultureInfo.CurrentCulture))
                    : ChoosingTexts.FormatSupersDueBeforeOver(Say.Day(due), Say.Day(end)),
                agent.DaysBeforeSupers?.Source.Text);
        }
        else if (agent.DaysBeforeSupers is null)
        {
            reasons.Note(ChoosingTexts.FormatSupersWaitByLabel(Say.Day(due), Say.Day(end)));
        }
    }
}
