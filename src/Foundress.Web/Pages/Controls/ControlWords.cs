using Foundress.Book.Proving;
using Foundress.Book.State;

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

    /// <summary>The days of a use.</summary>
    public static string Days(Control control)
    {
        var facts = control.Facts;
        if (facts.PlannedEnd == facts.Start)
            return Words.Day(facts.Start);
        return facts.PlannedEnd is { } end ? $"{Words.Day(facts.Start)} to {Words.Day(end)}" : $"from {Words.Day(facts.Start)}";
    }
}
