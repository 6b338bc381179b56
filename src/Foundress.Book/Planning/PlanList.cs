using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>Makes the short list of the plans that were looked at closely.</summary>
internal sealed class PlanList(
    CultureInfo culture, (double Value, string Source) tolerance, DateOnly today, DateOnly to, DateOnly judgedFrom, int jars, IReadOnlyList<Colony> colonies,
    ControlList controls, bool costs)
{
    private readonly PlanSentences _sentences = new(culture);

    internal ControlPlans Of(ApiaryId apiary, IReadOnlyList<PlanFinal> finals, PlanTally tally, PlanUses uses, IReadOnlyList<LineStep> lines)
    {
        var nothing = finals[0];
        PlanFinal[] plans = [.. finals.Skip(1)];
        PlanFinal[] holding = [.. plans.Where(plan => plan.Reading.Holds)];
        var virtues = new Dictionary<PlanFinal, List<PlanVirtue>> { [nothing] = [PlanVirtue.Nothing] };
        void Show(PlanVirtue virtue, PlanFinal? plan)
        {
            if (plan is null)
                return;
            if (!virtues.TryGetValue(plan, out var known))
                virtues[plan] = known = [];
            known.Add(virtue);
        }

        if (!nothing.Reading.Holds)
        {
            var fewest = holding.OrderBy(plan => PlanOrder.Fewest(plan.Weight, plan.Reading)).FirstOrDefault();
            Show(PlanVirtue.Fewest, fewest);
            Show(PlanVirtue.Gentlest, holding.OrderBy(plan => PlanOrder.Gentlest(plan.Weight, plan.Reading)).FirstOrDefault());
            Show(PlanVirtue.LeastWork, holding.OrderBy(plan => PlanOrder.LeastWork(plan.Weight, plan.Reading)).FirstOrDefault());
            if (costs)
                Show(PlanVirtue.Cheapest, holding.OrderBy(plan => PlanOrder.Cheapest(plan.Weight, plan.Reading)).FirstOrDefault());
            Show(PlanVirtue.Another, holding.Where(plan => fewest is not null && !plan.Uses.Any(use => fewest.Uses.Any(one => one.Agent.Id == use.Agent.Id))).OrderBy(plan => PlanOrder.Fewest(plan.Weight, plan.Reading)).FirstOrDefault());
            Show(PlanVirtue.Surest, plans.OrderBy(plan => PlanOrder.Surest(plan.Weight, plan.Reading)).FirstOrDefault());
            Show(PlanVirtue.NonChemical, plans.Where(plan => plan.Weight.NonChemical).OrderBy(plan => !plan.Reading.Holds).ThenBy(plan => plan.Reading.Holds ? plan.Weight.Controls : 0).ThenBy(plan => plan.Reading.Peak).FirstOrDefault());
        }

        PlanFinal[] shown = [.. virtues.Keys.OrderBy(plan => virtues[plan].Min()).ThenBy(plan => plan.Weight.Controls)];
        return new ControlPlans(
            apiary, [.. colonies.Select(colony => colony.Id)], today, to, tolerance.Value, tolerance.Source, judgedFrom, lines,
            [.. shown.Select(plan => Choice(plan, virtues[plan], nothing, holding.Length > 0))],
            [.. uses.RuledOut, .. Dropped(tally)], uses.LeftOut,
            _sentences.OfAll(finals, nothing, tolerance.Value, today, to, judgedFrom, jars),
            nothing.Reading.Holds ? string.Empty : PlanSentences.Searched(tally, uses.All.Count, uses.Looked, plans.Length));
    }

    private PlanChoice Choice(PlanFinal plan, List<PlanVirtue> virtues, PlanFinal nothing, bool anyHolds) => new(
        PlanSentences.Title(plan.Controls), virtues, [.. virtues.Select(virtue => _sentences.Why(virtue, plan, nothing, anyHolds, tolerance.Value))], plan.Controls,
        plan.Reading.Holds, plan.Reading.Peak, today.AddDays(plan.Reading.PeakDay), plan.Reading.Mean(plan.Reading.Days - 1), plan.Reading.DaysOver,
        plan.Controls.Sum(control => control.End > control.Start ? 2 : 1), (int)plan.Weight.WorstHazard,
        plan.Uses.All(use => controls.CostOf(use.Agent.Id) is not null) ? plan.Uses.Sum(use => controls.CostOf(use.Agent.Id)!.Value) : null,
        [.. Enumerable.Range(0, colonies.Count).Select(i => Colony(plan.Reading, i)).OrderByDescending(colony => colony.Peak).ThenBy(colony => colony.Name, NaturalOrder.Instance)],
        plan.Fan, _sentences.OfChoice(plan, tolerance.Value, today, colonies.Count));

    private PlannedColony Colony(PlanReading reading, int place)
    {
        var peak = reading.PeakOf(place);
        var day = Enumerable.Range(0, reading.Days).FirstOrDefault(one => reading.Chance(one, place) == peak && today.AddDays(one * reading.Step) >= judgedFrom);
        return new PlannedColony(colonies[place].Id, colonies[place].Name, reading.Chance(0, place), peak, today.AddDays(day * reading.Step));
    }

    private static IEnumerable<DroppedPlans> Dropped(PlanTally tally)
    {
        foreach (var (conflict, count) in tally.Conflicts)
            yield return new DroppedPlans(count, PlanRulings.Dropped((PlanConflict)conflict, count));
        if (tally.TooLate > 0)
            yield return new DroppedPlans(tally.TooLate, Plural.Pick(tally.TooLate, PlanTexts.FormatDroppedTooLate(tally.TooLate)));
        if (tally.NotNeeded > 0)
            yield return new DroppedPlans(tally.NotNeeded, Plural.Pick(tally.NotNeeded, PlanTexts.FormatDroppedNotNeeded(tally.NotNeeded)));
        if (tally.Heavier > 0)
            yield return new DroppedPlans(tally.Heavier, Plural.Pick(tally.Heavier, PlanTexts.FormatDroppedHeavier(tally.Heavier)));
        if (tally.LeftAside > 0)
            yield return new DroppedPlans(tally.LeftAside, Plural.Pick(tally.LeftAside, PlanTexts.FormatDroppedLeftAside(tally.LeftAside)), false);
    }
}
