using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Journal;
using Foundress.Book.Planning;
using Foundress.Book.Proving;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Judging;

namespace Foundress.Book.Dues;

/// <summary>Everything that is due over all apiaries, in the order in which it should be looked at.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">Calendar, lines and controls.</param>
/// <param name="strips">Reads the jars of the same book.</param>
public sealed class DueItems(BookState state, KnowledgeBase knowledge, SeasonStrips strips)
{
    // A day of the honey year that passed this long ago says nothing any more (product choice).
    private const int DayGone = 14;

    private readonly SeasonOverview _overview = new(state, knowledge, strips);

    /// <summary>
    /// What is due: jars over the line first, then what is overdue, then what can be done today, then what comes; what the
    /// keeper put off stands last, with the day it comes back.
    /// </summary>
    /// <param name="today">The reader's day.</param>
    public IReadOnlyList<DueItem> On(DateOnly today) => On(today, _overview.On(today));

    /// <summary>The same, from seasons that were read already.</summary>
    /// <param name="today">The reader's day.</param>
    /// <param name="seasons">All apiaries as they stand that day.</param>
    public IReadOnlyList<DueItem> On(DateOnly today, IReadOnlyList<ApiarySeason> seasons)
    {
        var items = new List<DueItem>();
        foreach (var season in seasons)
        {
            OfJars(season, today, items);
            OfHoney(season.Apiary, today, items);
        }

        foreach (var due in ControlDues.For(state, knowledge, today))
        {
            if (Of(due, today) is { } item)
                items.Add(item);
        }

        foreach (var due in PlannedDues.For(state, knowledge, today))
        {
            var plan = due.Plan.Facts;
            items.Add(new(due.Key, DueKind.Planned, plan.Apiary, [.. plan.Colonies.Where(state.Colonies.ContainsKey)], null, due.From, due.To, Time(due.From, due.To, today), due.Text, Agent: due.Use.Agent));
        }

        // A control over several apiaries is due in each of them.
        items.RemoveAll(item => !state.Lists(item.Apiary) && !item.Colonies.Any(id => state.Colonies.TryGetValue(id, out var colony) && state.Lists(colony.Apiary)));
        return [.. InOrder(items.Select(item => PutOff(item, today)), item => item)];
    }

    /// <summary>The order of the list: decisions first, then what is overdue, due now and coming, each by day; what was put off last.</summary>
    /// <param name="all">What is to be ordered.</param>
    /// <param name="item">What is due in each.</param>
    public static IOrderedEnumerable<T> InOrder<T>(IEnumerable<T> all, Func<T, DueItem> item) => all
        .OrderBy(one => item(one).Time == DueTime.PutOff)
        .ThenBy(one => item(one).Kind != DueKind.Decide)
        .ThenBy(one => item(one).Time)
        .ThenBy(one => item(one).Time == DueTime.Coming ? item(one).From : item(one).To)
        .ThenBy(one => item(one).Kind)
        .ThenBy(one => item(one).Key, StringComparer.Ordinal);

    private void OfJars(ApiarySeason season, DateOnly today, List<DueItem> items)
    {
        var apiary = season.Apiary.Id;
        if (season.Urgency is Urgency.OverTheLine or Urgency.NotSettled)
        {
            var wanted = season.Urgency == Urgency.OverTheLine ? Standing.Above : Standing.Unclear;
            var visit = strips.LastVisit(season.Apiary, today);
            var marks = visit.Where(mark => mark.Standing == wanted && !SeasonOverview.WasControlledSince(state, mark)).ToList();
            var day = visit.Max(mark => mark.On);
            IReadOnlyList<ColonyId> colonies = [.. marks.Select(mark => mark.Colony)];
            var names = SeasonSentence.Named([.. marks.Select(mark => mark.ColonyName)]);
            if (wanted == Standing.Above)
            {
                var text = Plural.Pick(marks.Count, DueTexts.FormatDecide(marks.Count, visit.Count, Say.Day(day), names));
                if (marks.Any(mark => SeasonOverview.WasCutShortSince(state, mark)))
                    text += " " + DueTexts.CutShort;
                items.Add(new($"decide:{apiary}:{Say.IsoDay(day)}", DueKind.Decide, apiary, colonies, null, day, today, DueTime.Now, text));
                OfInspection(apiary, colonies, today, items);
            }
            else
            {
                items.Add(new(
                    $"again:{apiary}:{Say.IsoDay(day)}", DueKind.SampleAgain, apiary, colonies, null, day, today, DueTime.Now,
                    DueTexts.FormatSecondJars(Say.Day(day), names) + InCluster(apiary, today)));
            }
        }

        foreach (var due in season.Pending)
        {
            items.Add(new(
                $"sample:{apiary}:{Say.IsoDay(due.From)}", DueKind.Sample, apiary, [], null, due.From, due.To, Time(due.From, due.To, today), due.Text));
        }
    }

    // Which controls are workable depends on supers and brood: the engine asks for both, and so does the list.
    private void OfInspection(ApiaryId apiary, IReadOnlyList<ColonyId> colonies, DateOnly today, List<DueItem> items)
    {
        var unknown = colonies.Where(colony =>
        {
            var fresh = state.InspectionsOf(colony).Select(seen => seen.Facts).Where(facts => facts.On <= today && facts.On >= today.AddDays(-Situations.FreshDays)).ToArray();
            return !fresh.Any(facts => facts.SupersOn is not null) || !fresh.Any(facts => facts.FramesOfBrood is not null);
        }).ToArray();
        if (unknown.Length == 0)
            return;
        var named = SeasonSentence.Named([.. unknown.Select(id => state.Colonies[id].Name)]);
        var ever = unknown.Any(colony => state.InspectionsOf(colony).Any(seen => seen.Facts.On <= today));
        items.Add(new(
            $"inspect:{apiary}", DueKind.Inspect, apiary, unknown, null, today, today, DueTime.Now,
            (ever ? DueTexts.FormatInspect(named, Situations.FreshDays) : DueTexts.FormatInspectFirst(named)) + InCluster(apiary, today)));
    }

    // Opening a cluster chills it, and shaking bees out of it can kill them.
    private string InCluster(ApiaryId apiary, DateOnly today) =>
        SiteSeason.Of(state.Apiaries[apiary], knowledge).PhaseOn(today).IsDormant()
            ? " " + DueTexts.InCluster
            : string.Empty;

    private void OfHoney(Apiary apiary, DateOnly today, List<DueItem> items)
    {
        if (!state.Days.TryGetValue(apiary.Id, out var days))
            return;
        Add(DueKind.SupersOn, "supers", days.SupersOn, DueTexts.SupersOn);
        Add(DueKind.Harvest, "harvest", days.HarvestOn, DueTexts.Harvest);

        void Add(DueKind kind, string key, DateOnly? day, string text)
        {
            if (day is { } on && on >= today.AddDays(-DayGone))
                items.Add(new($"{key}:{apiary.Id}:{Say.IsoDay(on)}", kind, apiary.Id, [], null, on, on, Time(on, on, today), text));
        }
    }

    private DueItem? Of(ControlDue due, DateOnly today)
    {
        var facts = due.Control.Facts;
        var colonies = facts.Colonies.Distinct().Where(state.Colonies.ContainsKey).ToArray();
        if (colonies.Length == 0)
            return null;
        var (kind, word) = due.Kind switch
        {
            ControlDueKind.TakeOut => (DueKind.TakeOut, "take-out"),
            ControlDueKind.Prove => (DueKind.Prove, "prove"),
            ControlDueKind.SupersBack => (DueKind.SupersBack, "supers-back"),
            _ => (DueKind.WithdrawalOver, "withdrawal"),
        };
        if (kind == DueKind.TakeOut)
            colonies = [.. colonies.Where(id => state.CoursesOf(id).Any(course => course.Control.Id == due.Control.Id && course.Ending == CourseEnding.Open))];
        if (colonies.Length == 0)
            return null;
        var apiary = state.Colonies[colonies[0]].ApiaryOn(facts.Start);
        return new(
            string.Create(CultureInfo.InvariantCulture, $"{word}:{due.Control.Id}"), kind, apiary, colonies, due.Control.Id, due.From, due.To,
            due.Overdue ? DueTime.Overdue : Time(due.From, due.To, today), due.Text);
    }

    private DueItem PutOff(DueItem item, DateOnly today) =>
        state.PutOff.TryGetValue(item.Key, out var snoozed) && snoozed.Until > today ? item with { Time = DueTime.PutOff, PutOff = snoozed } : item;

    private static DueTime Time(DateOnly from, DateOnly to, DateOnly today) =>
        to < today ? DueTime.Overdue : from <= today ? DueTime.Now : DueTime.Coming;
}
