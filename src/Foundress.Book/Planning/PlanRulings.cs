using Foundress.Book.Controls;

namespace Foundress.Book.Planning;

/// <summary>Whether a control can follow those before it in a plan, by the same rules as the choice of a single one.</summary>
/// <param name="controls">The operation's controls.</param>
/// <param name="brood">Whether some colony has sealed brood under a plan on a day, and whether some has none.</param>
internal sealed class PlanRulings(ControlList controls, Func<IReadOnlyList<PlanUse>, DateOnly, (bool Some, bool None)> brood)
{
    internal PlanConflict Of(IReadOnlyList<PlanUse> earlier, PlanUse next)
    {
        PlanUse? last = null;
        var bees = false;
        foreach (var before in earlier)
        {
            bees |= before.IsHusbandry;
            var same = before.Agent.Id == next.Agent.Id;
            if (next.Start < before.End && (same || before.Agent.IsNonChemical == next.Agent.IsNonChemical))
                return PlanConflict.Overlap;
            if (same && next.Agent.MinimumInterval is { Value: > 0 } interval && next.Start < before.End.AddDays((int)interval.Value))
                return PlanConflict.Interval;
            if (!before.Agent.IsNonChemical && (last is null || before.End >= last.End))
                last = before;
        }

        if (last is null ? next.NeedsOtherFirst : !next.Agent.IsNonChemical && last.Agent.ModeId == next.Agent.ModeId && controls.ModeOf(next.Agent).Rotates)
            return PlanConflict.Rotation;
        if (next.NeedsBroodless && (!bees || brood(earlier, next.Start).Some))
            return PlanConflict.SealedBrood;
        return next.NeedsBrood && bees && brood(earlier, next.Start).None ? PlanConflict.NoBrood : PlanConflict.None;
    }

    /// <summary>Why plans were dropped, in words.</summary>
    internal static string Say(PlanConflict conflict) => conflict switch
    {
        PlanConflict.Overlap => "one control would begin while another of its kind is at work",
        PlanConflict.Interval => "a control would be used again too soon",
        PlanConflict.Rotation => "two controls of one group would follow each other",
        PlanConflict.SealedBrood => "a control that needs a time without sealed brood would meet brood",
        PlanConflict.NoBrood => "a control that needs brood would find none",
        _ => throw new ArgumentOutOfRangeException(nameof(conflict), conflict, "This is no conflict."),
    };
}
