using Foundress.Book.Controls;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Rules;

/// <summary>What is doubtful about a control in one colony, by what the book knows of it.</summary>
internal static class ControlDoubts
{
    /// <summary>An inspection older than this says nothing of supers and brood any more (product choice).</summary>
    private const int FreshDays = 21;

    internal static void Check(ControlRecord record, ControlAgent agent, Colony colony, BookState state, ControlList controls, Findings findings)
    {
        var seen = state.InspectionsOf(colony.Id).Where(i => i.Facts.On <= record.Start && i.Facts.On >= record.Start.AddDays(-FreshDays)).ToArray();
        CheckSupers(agent, colony, seen.LastOrDefault(i => i.Facts.SupersOn is not null), state.Policy.Jurisdiction, findings);
        if (agent.Requirements.FirstOrDefault(r => r is { Need: ControlNeed.Broodless, IsStrict: true }) is { } broodless
            && seen.LastOrDefault(i => i.Facts.FramesOfBrood is not null) is { Facts: { FramesOfBrood: > 0 } brood })
        {
            findings.Doubt("agent", agent.Id, $"Colony {colony.Name} had {Findings.Show(brood.FramesOfBrood.Value)} frames of brood on {Findings.Show(brood.On)}. {broodless.Text}");
        }

        CheckEarlier(record, agent, colony, state, controls, findings);
    }

    private static void CheckSupers(ControlAgent agent, Colony colony, Inspection? seen, Jurisdiction? jurisdiction, Findings findings)
    {
        if (agent.IsNonChemical || seen is not { Facts: { SupersOn: true } facts })
            return;
        var ruling = jurisdiction is { } where ? agent.SupersIn(where) : null;
        if (ruling?.Rule == SuperRule.MayBeOn)
            return;
        var rule = ruling?.Rule == SuperRule.NotOn
            ? $"{agent.Title}: {ruling.Text ?? "not while supers are on."}"
            : $"Read the label whether {agent.Title} may be used then.";
        findings.Doubt("agent", agent.Id, $"Colony {colony.Name} had supers on, on {Findings.Show(facts.On)}. {rule} Nothing may come into honey for people unless the label allows it.");
    }

    private static void CheckEarlier(ControlRecord record, ControlAgent agent, Colony colony, BookState state, ControlList controls, Findings findings)
    {
        var mode = controls.ModeOf(agent);
        var end = record.PlannedEnd ?? record.Start.AddDays((int)agent.Days.Value);
        var others = state.CoursesOf(colony.Id).Where(course => course.Control.Id != record.Control).ToArray();
        foreach (var course in others)
        {
            var sameGroup = controls.Find(course.Agent) is { } other && other.ModeId == agent.ModeId;
            if (course.Start <= end && (course.End ?? course.PlannedEnd ?? course.Start) >= record.Start && !agent.IsNonChemical && sameGroup)
                findings.Doubt("start", record.Start, $"Colony {colony.Name} has {controls.TitleOf(course.Agent)} from {Findings.Show(course.Start)} at work then, of the same kind: {mode.Title}. Two at once is too much; check the days.");
        }

        var before = others.Where(course => (course.End ?? course.PlannedEnd ?? course.Start) < record.Start && controls.Find(course.Agent) is { IsNonChemical: false }).ToArray();
        if (before.LastOrDefault(course => course.Agent == agent.Id) is { } same && agent.MinimumInterval is { } interval)
        {
            var over = same.End ?? same.PlannedEnd ?? same.Start;
            var days = record.Start.DayNumber - over.DayNumber;
            if (days < interval.Value)
                findings.Doubt("start", record.Start, $"Colony {colony.Name} had {agent.Title} until {Findings.Show(over)}, {days} days before. At least {Findings.Show(interval.Value)} days are usual; the label decides.");
        }

        if (mode.Rotates && before.LastOrDefault() is { } last && controls.Find(last.Agent) is { } previous && previous.ModeId == agent.ModeId)
            findings.Doubt("agent", agent.Id, $"Colony {colony.Name} had {controls.TitleOf(last.Agent)} last time, of the same group: {mode.Title}. Another group next keeps both of use.");
    }
}
