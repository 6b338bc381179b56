using Foundress.Book.Proving;
using Foundress.Book.Registering;
using Foundress.Book.State;
using Foundress.Reports.Registering;

namespace Foundress.Web.Pages.Controls;

/// <summary>Controls and proofs in few words.</summary>
public static class ControlWords
{
    /// <summary>What stands at every step of a control.</summary>
    public const string Defer = "The label in your hand, local law and licensed practice decide. Foundress informs; it tells no dose.";

    /// <summary>The verdict, or how the proof stands.</summary>
    public static string Verdict(ControlProof proof) => proof.Verdict switch
    {
        Science.Verifying.Verdict.Worked => "Worked",
        Science.Verifying.Verdict.Partly => "Worked in part",
        Science.Verifying.Verdict.Failed => "Reduced effect",
        Science.Verifying.Verdict.CannotTell => "Cannot tell",
        _ => proof.Due?.State switch
        {
            ProofState.Due => "Jars after it are due",
            ProofState.Overdue => "Jars after it are overdue",
            ProofState.Done => "No verdict",
            _ => "Not proven yet",
        },
    };

    /// <summary>How a course stands in one colony.</summary>
    public static string Ending(Course course) => course.Ending switch
    {
        CourseEnding.Open => "at work",
        CourseEnding.AsPlanned => course.End == course.Start ? "done" : $"over {Words.Day(course.End!.Value)}",
        CourseEnding.StoppedEarly => $"stopped early {Words.Day(course.End!.Value)}",
        CourseEnding.Partial => $"in part, over {Words.Day(course.End!.Value)}",
        _ => $"colony ended {Words.Day(course.End!.Value)}",
    };

    /// <summary>The days of a use, as they were; as they are planned while it is at work.</summary>
    /// <param name="control">The use.</param>
    /// <param name="state">The book.</param>
    public static string Days(Control control, BookState state)
    {
        var facts = control.Facts;
        var courses = state.CoursesOf(control);
        var from = Words.Day(facts.Start);
        if (courses.Any(course => course.Ending == CourseEnding.Open))
        {
            return facts.PlannedEnd is not { } planned ? $"from {from}, no end given"
                : $"from {from}, planned to {Words.Day(planned)}, {(courses.Any(course => course.Ending != CourseEnding.Open) ? "over in some colonies" : "no end recorded yet")}";
        }

        var last = courses.Count == 0 ? facts.PlannedEnd ?? facts.Start : courses.Max(course => course.End ?? facts.Start);
        var days = last == facts.Start ? from : $"{from} to {Words.Day(last)}";
        if (courses.Any(course => course.Ending == CourseEnding.StoppedEarly))
            days += courses.All(course => course.Ending == CourseEnding.StoppedEarly) ? ", stopped early" : ", in some colonies stopped early";
        return courses.Any(course => course.Ending == CourseEnding.Partial) ? days + ", in part" : days;
    }

    /// <summary>What was said of the end of a use, a sentence each.</summary>
    /// <param name="control">The use.</param>
    /// <param name="state">The book.</param>
    public static IEnumerable<string> Ends(Control control, BookState state) => control.Ends.Select(end => RegisterWords.Ending(new RegisterEnd(
        end.Facts.On, end.Facts.Ending, [.. (end.Facts.Colonies ?? []).Select(id => Words.Name(id, state)).Order(NaturalOrder.Instance)], end.Facts.Reason, end.Facts.Note, null)));
}
