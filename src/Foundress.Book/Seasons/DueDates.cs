using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Sampling;

namespace Foundress.Book.Seasons;

/// <summary>When an apiary's jars are due, and which of those dates were kept.</summary>
public static class DueDates
{
    /// <summary>The sampling dates of a stretch of time.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">The calendar's rules.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day.</param>
    /// <param name="today">The reader's day: what has passed without jars by then is overdue.</param>
    public static IReadOnlyList<DueMark> For(
        Apiary apiary, BookState state, KnowledgeBase knowledge, DateOnly from, DateOnly to, DateOnly today)
    {
        var rules = knowledge.CalendarRules.Select(entry => entry.Rule).ToList();
        var sampled = state.JarsIn(apiary.Id).Select(one => one.Jar.Facts.On).ToHashSet();
        var begun = Begun(apiary, state);
        var marks = new List<DueMark>();
        // Jars taken late still do the job, until the next date asks for new ones.
        var dates = YearCalendar.Dates(SiteSeason.Of(apiary, knowledge), rules, from, to.AddYears(1));
        for (var i = 0; i < dates.Count && dates[i].On <= to; i++)
        {
            var date = dates[i];
            if (begun is null || date.To < begun)
                continue;
            var next = i + 1 < dates.Count ? dates[i + 1].From : date.To.AddYears(1);
            var done = sampled.Any(day => day >= date.From && (day <= date.To || day < next));
            marks.Add(new DueMark(date.On, date.From, date.To, knowledge.CalendarRules[date.Purpose].Text, done, !done && date.To < today));
        }

        return marks;
    }

    /// <summary>The next date on which jars are due and not yet taken, from today on.</summary>
    public static DueMark? Next(Apiary apiary, BookState state, KnowledgeBase knowledge, DateOnly today) =>
        For(apiary, state, knowledge, today.AddMonths(-2), today.AddYears(1), today).FirstOrDefault(mark => !mark.Done && mark.To >= today);

    // Nothing was due in an apiary before it had a colony.
    private static DateOnly? Begun(Apiary apiary, BookState state)
    {
        DateOnly? first = null;
        foreach (var colony in state.Colonies.Values)
        {
            foreach (var stay in colony.Stays.Where(stay => stay.Apiary == apiary.Id))
            {
                var since = stay.Since ?? FirstSeen(colony, state);
                if (first is null || since < first)
                    first = since;
            }
        }

        return first;
    }

    private static DateOnly FirstSeen(Colony colony, BookState state)
    {
        var written = DateOnly.FromDateTime(state.EntriesOf(colony.Id)[0].Clock.Instant.UtcDateTime);
        var jars = state.JarsOf(colony.Id);
        return jars.Count > 0 && jars[0].Facts.On < written ? jars[0].Facts.On : written;
    }
}
