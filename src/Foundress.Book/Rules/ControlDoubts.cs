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
            findings.Doubt("agent", agent.Id, ControlRuleTexts.FormatBroodWasSeen(colony.Name, Findings.Show(brood.FramesOfBrood.Value), Findings.Show(brood.On), broodless.Text));
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
        findings.Doubt("agent", agent.Id, ruling?.Rule == SuperRule.NotOn
            ? ControlRuleTexts.FormatSupersRuled(colony.Name, Findings.Show(facts.On), agent.Title, ruling.Text ?? ControlRuleTexts.NotWithSupers)
            : ControlRuleTexts.FormatSupersUnruled(colony.Name, Findings.Show(facts.On), agent.Title));
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
                findings.Doubt("start", record.Start, ControlRuleTexts.FormatSameKindAtWork(colony.Name, controls.TitleOf(course.Agent), Findings.Show(course.Start), mode.Title));
        }

        var before = others.Where(course => (course.End ?? course.PlannedEnd ?? course.Start) < record.Start && controls.Find(course.Agent) is { IsNonChemical: false }).ToArray();
        if (before.LastOrDefault(course => course.Agent == agent.Id) is { } same && agent.MinimumInterval is { } interval)
        {
            var over = same.End ?? same.PlannedEnd ?? same.Start;
            var days = record.Start.DayNumber - over.DayNumber;
            if (days < interval.Value)
                findings.Doubt("start", record.Start, ControlRuleTexts.FormatTooSoonAgain(colony.Name, agent.Title, Findings.Show(over), days, Findings.Show(interval.Value)));
        }

        if (mode.Rotates && before.LastOrDefault() is { } last && controls.Find(last.Agent) is { } previous && previous.ModeId == agent.ModeId)
            findings.Doubt("agent", agent.Id, ControlRuleTexts.FormatSameGroupAgain(colony.Name, controls.TitleOf(last.Agent), mode.Title));
    }
}
