using Foundress.Book.Controls;
using Foundress.Book.State;
using Foundress.Book.Wording;

namespace Foundress.Book.Seasons;

/// <summary>Finds the controls of a strip. Colonies that got the same from the same day to the same day are one bar.</summary>
internal static class ControlBars
{
    internal static IReadOnlyList<ControlBar> Of(IEnumerable<Course> courses, ControlList controls, DateOnly from, DateOnly to, DateOnly today)
    {
        var bars = new List<ControlBar>();
        foreach (var group in courses.GroupBy(course => (course.Agent, course.Start, Last: Last(course, today), Open: course.Ending == CourseEnding.Open)))
        {
            if (group.Key.Start > to || group.Key.Last < from)
                continue;
            var partly = group.Count(course => course.Ending == CourseEnding.Partial);
            var early = group.Count(course => course.Ending == CourseEnding.StoppedEarly);
            var gone = group.Count(course => course.Ending == CourseEnding.ColonyEnded);
            var ending = string.Join(", ", new[]
            {
                partly > 0 ? Plural.Pick(partly, SeasonTexts.FormatInPart(partly)) : null,
                early > 0 ? Plural.Pick(early, SeasonTexts.FormatStoppedEarly(early)) : null,
                gone > 0 ? Plural.Pick(gone, SeasonTexts.FormatEndedMeanwhile(gone)) : null,
            }.OfType<string>());
            bars.Add(new(controls.TitleOf(group.Key.Agent), group.Key.Start, group.Key.Last, group.Key.Open, group.Select(course => course.Colony).Distinct().Count(), ending));
        }

        return [.. bars.OrderBy(bar => bar.From).ThenBy(bar => bar.To).ThenBy(bar => bar.Title, StringComparer.Ordinal)];
    }

    // One that is open is at work up to today at least, and up to its planned end.
    private static DateOnly Last(Course course, DateOnly today)
    {
        if (course.End is { } end)
            return end;
        var last = course.PlannedEnd is { } planned && planned > today ? planned : today;
        return last < course.Start ? course.Start : last;
    }
}
