using Foundress.Book.Proving;
using Foundress.Book.Registering;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Reports.Registering;

namespace Foundress.Web.Pages.Controls;

/// <summary>Controls and proofs in few words.</summary>
public static class ControlWords
{
    /// <summary>What stands at every step of a control.</summary>
    public static string Defer => ControlTexts.Defer;

    /// <summary>The verdict, or how the proof stands.</summary>
    public static string Verdict(ControlProof proof) => proof.Verdict switch
    {
        Science.Verifying.Verdict.Worked => ControlTexts.VerdictWorked,
        Science.Verifying.Verdict.Partly => ControlTexts.VerdictPartly,
        Science.Verifying.Verdict.Failed => ControlTexts.VerdictFailed,
        Science.Verifying.Verdict.CannotTell => ControlTexts.VerdictCannotTell,
        _ => proof.Due?.State switch
        {
            ProofState.Due => ControlTexts.ProofDue,
            ProofState.Overdue => ControlTexts.ProofOverdue,
            ProofState.Done => ControlTexts.ProofNoVerdict,
            _ => ControlTexts.ProofNotYet,
        },
    };

    /// <summary>How a course stands in one colony.</summary>
    public static string Ending(Course course) => course.Ending switch
    {
        CourseEnding.Open => ControlTexts.EndingOpen,
        CourseEnding.AsPlanned => course.End == course.Start ? ControlTexts.EndingDone : ControlTexts.FormatEndingOver(Say.Day(course.End!.Value)),
        CourseEnding.StoppedEarly => ControlTexts.FormatEndingStopped(Say.Day(course.End!.Value)),
        CourseEnding.Partial => ControlTexts.FormatEndingInPart(Say.Day(course.End!.Value)),
        _ => ControlTexts.FormatEndingColonyEnded(Say.Day(course.End!.Value)),
    };

    /// <summary>The days of a use, as they were; as they are planned while it is at work.</summary>
    /// <param name="control">The use.</param>
    /// <param name="state">The book.</param>
    public static string Days(Control control, BookState state)
    {
        var facts = control.Facts;
        var courses = state.CoursesOf(control);
        var from = Say.Day(facts.Start);
        if (courses.Any(course => course.Ending == CourseEnding.Open))
        {
            return facts.PlannedEnd is not { } planned ? ControlTexts.FormatDaysOpenNoEnd(from)
                : courses.Any(course => course.Ending != CourseEnding.Open) ? ControlTexts.FormatDaysOpenSomeOver(from, Say.Day(planned))
                : ControlTexts.FormatDaysOpenNoEndYet(from, Say.Day(planned));
        }

        var last = courses.Count == 0 ? facts.PlannedEnd ?? facts.Start : courses.Max(course => course.End ?? facts.Start);
        var days = last == facts.Start ? from : ControlTexts.FormatDaysFromTo(from, Say.Day(last));
        if (courses.Any(course => course.Ending == CourseEnding.StoppedEarly))
            days = courses.All(course => course.Ending == CourseEnding.StoppedEarly) ? ControlTexts.FormatDaysStopped(days) : ControlTexts.FormatDaysStoppedInSome(days);
        return courses.Any(course => course.Ending == CourseEnding.Partial) ? ControlTexts.FormatDaysInPart(days) : days;
    }

    /// <summary>What was said of the end of a use, a sentence each.</summary>
    /// <param name="control">The use.</param>
    /// <param name="state">The book.</param>
    public static IEnumerable<string> Ends(Control control, BookState state) => control.Ends.Select(end => RegisterWords.Ending(new RegisterEnd(
        end.Facts.On, end.Facts.Ending, [.. (end.Facts.Colonies ?? []).Select(id => Words.Name(id, state)).Order(NaturalOrder.Instance)], end.Facts.Reason, end.Facts.Note, null)));
}
