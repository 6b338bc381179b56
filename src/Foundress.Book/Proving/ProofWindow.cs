using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Judging;

namespace Foundress.Book.Proving;

/// <summary>When a control can be proven.</summary>
internal static class ProofWindow
{
    /// <summary>An inspection tells of the brood at the start when it is no further off than this (product choice).</summary>
    private const int InspectionDays = 14;

    /// <summary>Whether the colonies had sealed brood: by inspections around the start, else by the season of the apiary.</summary>
    internal static bool WithBrood(Control control, BookState state, KnowledgeBase knowledge, Apiary? apiary)
    {
        var start = control.Facts.Start;
        var seen = control.Facts.Colonies
            .SelectMany(state.InspectionsOf)
            .Select(inspection => inspection.Facts)
            .Where(facts => facts.FramesOfBrood is not null && Math.Abs(facts.On.DayNumber - start.DayNumber) <= InspectionDays)
            .ToArray();
        return seen.Length > 0
            ? seen.Any(facts => facts.FramesOfBrood > 0)
            : SiteSeason.Of(apiary, knowledge).PhaseOn(start) != SeasonPhase.DormantBroodless;
    }

    /// <summary>The window of the jars after, for one end.</summary>
    internal static ProofDue Of(DateOnly start, DateOnly end, ControlAgent? agent, bool withBrood, ProofRules rules, DateOnly today)
    {
        // A short control that spares mites under cappings is proven when those have come out.
        var wait = (int)rules.SealedWait.Value - (end.DayNumber - start.DayNumber);
        var from = withBrood && agent is not { Reach: BroodReach.Yes } && wait > 0 ? end.AddDays(wait) : end;
        var to = from.AddDays((int)rules.ProveWithin.Value);
        return new(from, to, today < from ? ProofState.Waiting : today <= to ? ProofState.Due : ProofState.Overdue);
    }
}
