using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Judging;

namespace Foundress.Book.Seasons;

/// <summary>All apiaries in the order in which they need their keeper.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">The calendar's rules.</param>
/// <param name="strips">Reads the jars of the same book.</param>
public sealed class SeasonOverview(BookState state, KnowledgeBase knowledge, SeasonStrips strips)
{
    /// <summary>
    /// The apiaries: first those with jars over the line, then those where it is not settled, then those with jars overdue,
    /// then those that wait for the jars after a control, then the rest; by name within each.
    /// </summary>
    /// <param name="today">The reader's day.</param>
    public IReadOnlyList<ApiarySeason> On(DateOnly today) =>
        [.. state.ApiariesByName.Select(apiary => Of(apiary, today)).OrderBy(season => season.Urgency)];

    /// <summary>One apiary.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="today">The reader's day.</param>
    public ApiarySeason Of(Apiary apiary, DateOnly today)
    {
        var pending = Pending(apiary, today);
        var urgency = UrgencyOf(apiary, pending, today);
        var sentence = strips.Sentence(apiary, today);
        if (urgency == Urgency.Overdue)
            sentence = $"{SeasonTexts.FormatNoneTaken(Say.Day(pending.First(due => due.Overdue).To))} {sentence}";
        return new ApiarySeason(apiary, urgency, sentence, pending);
    }

    private Urgency UrgencyOf(Apiary apiary, IReadOnlyList<DueMark> pending, DateOnly today)
    {
        if (state.ColoniesIn(apiary.Id, today).Count == 0)
            return Urgency.Rest;
        // Jars too old to say how it stands today settle nothing: only what is due counts then.
        // A jar that was answered by a control asks for nothing more until the jars after it.
        var fresh = strips.LastVisit(apiary, today).Where(mark => mark.On >= today.AddDays(-SeasonSentence.Stale)).ToList();
        var latest = fresh.Where(mark => !WasControlledSince(state, mark)).ToList();
        if (latest.Any(mark => mark.Standing == Standing.Above))
            return Urgency.OverTheLine;
        if (latest.Any(mark => mark.Standing == Standing.Unclear))
            return Urgency.NotSettled;
        if (pending.Any(due => due.Overdue))
            return Urgency.Overdue;
        return fresh.Any(mark => IsOpenQuestion(mark) && WasControlledSince(state, mark)) ? Urgency.Answered : Urgency.Rest;
    }

    /// <summary>Whether a control that was not cut short was started in a jar's colony on its day or after.</summary>
    internal static bool WasControlledSince(BookState state, JarMark mark) =>
        state.CoursesOf(mark.Colony).Any(course => course.Start >= mark.On && !course.WasCutShort);

    /// <summary>Whether only controls that were cut short were started in a jar's colony on its day or after.</summary>
    internal static bool WasCutShortSince(BookState state, JarMark mark) =>
        state.CoursesOf(mark.Colony).Any(course => course.Start >= mark.On) && !WasControlledSince(state, mark);

    private static bool IsOpenQuestion(JarMark mark) => mark.Standing is Standing.Above or Standing.Unclear;

    // What was missed before the last date kept no longer matters, and of several missed dates the last one stands for all.
    private List<DueMark> Pending(Apiary apiary, DateOnly today)
    {
        if (state.ColoniesIn(apiary.Id, today).Count == 0)
            return [];
        var marks = DueDates.For(apiary, state, knowledge, today.AddMonths(-6), today.AddYears(1), today);
        var kept = marks.Where(mark => mark.Done).Select(mark => mark.On).DefaultIfEmpty(DateOnly.MinValue).Max();
        var pending = new List<DueMark>();
        if (marks.LastOrDefault(mark => mark.Overdue && mark.On > kept) is { } missed)
            pending.Add(missed);
        pending.AddRange(marks.Where(mark => !mark.Done && mark.From <= today && mark.To >= today));
        if (marks.FirstOrDefault(mark => !mark.Done && mark.From > today) is { } next)
            pending.Add(next);
        return pending;
    }
}
