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
                reasons.Note(ruling.Text ?? "Allowed with supers on by the labels seen; yours decides.");
            return;
        }

        if (situation.SupersOn is not { } on)
        {
            reasons.Missing(Ground.Supers, "Not known: enter whether supers are on, in an inspection of the last three weeks.");
            return;
        }

        if (on)
            WithSupersOn(situation, ruling, reasons);
        else
            BeforeSupers(agent, situation, end, reasons);
    }

    private static void WithSupersOn(Situation situation, SuperRuling? ruling, Reasons reasons)
    {
        var off = situation.HarvestOn is { } harvest && harvest >= situation.Start ? $" Supers come off on {Say.Day(harvest)}." : " Take the harvest first.";
        if (ruling is null)
            reasons.Missing(Ground.Supers, "Supers are on, and your country is not set. Enter it in the settings, and the label's rule for this control.", holds: true);
        else if (ruling.Rule == SuperRule.NotOn)
            reasons.Against(Ground.Supers, $"Supers are on. {ruling.Text ?? "Not while supers are on."}{off}", ruling.Source.Text);
        else
            reasons.Missing(Ground.Supers, $"Supers are on, and whether the label allows it then is not entered for this control (settings, your controls). {ruling.Text}", ruling.Source.Text, holds: true);
    }

    private static void BeforeSupers(ControlAgent agent, Situation situation, DateOnly end, Reasons reasons)
    {
        if (situation.SupersDue is not { } due)
        {
            if (situation.Phase is SeasonPhase.Increase or SeasonPhase.Peak)
                reasons.Missing(Ground.Supers, "Not known: enter when supers are to go on; it must be over before, by as many days as the label says.");
            return;
        }

        if (due < situation.Start)
            return;
        if (end.AddDays((int)(agent.DaysBeforeSupers?.Value ?? 0)) > due)
        {
            reasons.Against(
                Ground.Supers,
                $"Supers are due on {Say.Day(due)}; it would be over on {Say.Day(end)}{(agent.DaysBeforeSupers is { Value: > 0 } wait ? $", and supers must wait {wait.Value:0} days more" : string.Empty)}.",
                agent.DaysBeforeSupers?.Source.Text);
        }
        else if (agent.DaysBeforeSupers is null)
        {
            reasons.Note($"Supers are due on {Say.Day(due)}: the label says how many days they must wait after {Say.Day(end)}.");
        }
    }
}
