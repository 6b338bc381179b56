using Foundress.Book.Controls;
using Foundress.Book.Wording;

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

    /// <summary>How many plans were dropped and why, in words.</summary>
    internal static string Dropped(PlanConflict conflict, int count) => Plural.Pick(count, conflict switch
    {
        PlanConflict.Overlap => PlanTexts.FormatDroppedOverlap(count),
        PlanConflict.Interval => PlanTexts.FormatDroppedInterval(count),
        PlanConflict.Rotation => PlanTexts.FormatDroppedRotation(count),
        PlanConflict.SealedBrood => PlanTexts.FormatDroppedSealedBrood(count),
        PlanConflict.NoBrood => PlanTexts.FormatDroppedNoBrood(count),
        _ => throw new ArgumentOutOfRangeException(nameof(conflict), conflict, "This is no conflict."),
    });
}
