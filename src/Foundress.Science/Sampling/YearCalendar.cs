using Foundress.Science.Judging;

namespace Foundress.Science.Sampling;

/// <summary>Turns rules about the colonies' year into dates, north and south of the equator alike.</summary>
public static class YearCalendar
{
    /// <summary>The sampling dates in a window, by date; rules of one phase apply each time the phase comes round.</summary>
    /// <param name="year">The site's year, already set for its hemisphere.</param>
    /// <param name="rules">When to sample.</param>
    /// <param name="from">First day of the window.</param>
    /// <param name="until">First day after the window.</param>
    /// <remarks>
    /// A phase is looked at whole even where the window cuts it: the date of "the middle of the increase" does not depend on
    /// the day one asks. A phase that lasts all year starts anew every 1 January.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The window is empty, reaches outside the years 2 to 9997, or a leeway is negative.</exception>
    public static IReadOnlyList<SamplingDate> Dates(SeasonYear year, IReadOnlyList<CalendarRule> rules, DateOnly from, DateOnly until)
    {
        ArgumentNullException.ThrowIfNull(year);
        ArgumentNullException.ThrowIfNull(rules);
        if (until <= from)
            throw new ArgumentOutOfRangeException(nameof(until), until, $"A window must end after it begins ({from:yyyy-MM-dd}).");
        if (from.Year < 2 || until.Year > 9997)
            throw new ArgumentOutOfRangeException(nameof(from), from, "A calendar can be made for the years 2 to 9997.");

        var dates = new List<SamplingDate>();
        foreach (PhaseSpan span in WholeSpans(year, from, until))
        {
            foreach (CalendarRule rule in rules)
            {
                if (rule.Leeway < 0)
                    throw new ArgumentOutOfRangeException(nameof(rules), rule.Leeway, $"The leeway of the rule '{rule.Purpose}' is 0 days or more.");
                if (rule.Phase != span.Phase)
                    continue;
                DateOnly on = Point(span, rule.Point);
                if (on >= from && on < until)
                    dates.Add(new(on, Later(on.AddDays(-rule.Leeway), span.From), Earlier(on.AddDays(rule.Leeway), span.LastDay), span.Phase, rule.Purpose));
            }
        }

        // Sorted stably, so that rules on one day keep their order.
        return [.. dates.OrderBy(date => date.On)];
    }

    /// <summary>The date to sample again after a control ended: from the day after its end, at the latest when the days are over.</summary>
    /// <param name="year">The site's year.</param>
    /// <param name="ended">The last day of the control.</param>
    /// <param name="within">Days within which to sample, 1 or more.</param>
    /// <param name="purpose">What the count is for.</param>
    /// <remarks>
    /// For a control that spares mites in sealed brood a jar this early still flatters it: see the methods for proof of a control.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="within"/> is below 1.</exception>
    public static SamplingDate AfterControl(SeasonYear year, DateOnly ended, int within, string purpose)
    {
        ArgumentNullException.ThrowIfNull(year);
        if (within < 1)
            throw new ArgumentOutOfRangeException(nameof(within), within, "The days to sample again within are 1 or more.");
        DateOnly last = ended.AddDays(within);
        return new(last, ended.AddDays(1), last, year.PhaseOn(last), purpose);
    }

    private static IEnumerable<PhaseSpan> WholeSpans(SeasonYear year, DateOnly from, DateOnly until)
    {
        if (year.Phases.Distinct().Count() == 1)
        {
            for (int number = from.Year; number <= until.Year; number++)
                yield return new(year.Phases[0], new(number, 1, 1), new(number + 1, 1, 1));
            yield break;
        }

        // A year and more on both sides holds every phase that touches the window whole; the cut ones at the far ends are dropped.
        IReadOnlyList<PhaseSpan> spans = year.Spans(new(from.Year - 1, 1, 1), new(until.Year + 2, 1, 1));
        for (int i = 1; i < spans.Count - 1; i++)
        {
            if (spans[i].Until > from && spans[i].From < until)
                yield return spans[i];
        }
    }

    private static DateOnly Point(PhaseSpan span, PhasePoint point) => point switch
    {
        PhasePoint.Start => span.From,
        PhasePoint.Middle => span.From.AddDays(span.Days / 2),
        PhasePoint.End => span.LastDay,
        _ => throw new ArgumentOutOfRangeException(nameof(point), point, "A rule names the start, the middle or the end of a phase."),
    };

    private static DateOnly Later(DateOnly one, DateOnly other) => one > other ? one : other;

    private static DateOnly Earlier(DateOnly one, DateOnly other) => one < other ? one : other;
}
