using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Proving;

/// <summary>What is due because of controls: take out, prove, withdrawal over, supers back.</summary>
public static class ControlDues
{
    /// <summary>Everything due or coming, earliest first. What has been done is left out; days that only tell something leave once they have passed.</summary>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">The known controls.</param>
    /// <param name="today">The reader's day.</param>
    public static IReadOnlyList<ControlDue> For(BookState state, KnowledgeBase knowledge, DateOnly today)
    {
        var controls = ControlList.Of(state, knowledge);
        var proofs = new ControlProofs(state, knowledge, today, CultureInfo.InvariantCulture);
        var dues = new List<ControlDue>();
        foreach (var control in state.Controls.Values)
        {
            // A colony that was struck out asks for nothing any more.
            var courses = state.CoursesOf(control).Where(course => state.Colonies.ContainsKey(course.Colony)).ToArray();
            var title = controls.TitleOf(control.Facts.Agent);
            var open = courses.Where(course => course.Ending == CourseEnding.Open).ToArray();
            if (open.Length > 0 && control.Facts.PlannedEnd is { } planned)
                dues.Add(new(ControlDueKind.TakeOut, control, planned, planned, $"Take out {title} ({Say.Count(open.Length, "colony", "colonies")}).{(planned < today ? " What is left in too long breeds mites that withstand it." : string.Empty)}", planned < today));
            var ends = courses.Select(course => course.End ?? course.PlannedEnd).OfType<DateOnly>().ToArray();
            if (ends.Length == 0)
                continue;
            var end = ends.Max();
            AddDays(dues, control, controls, title, end, today);
            // A proof long past its time is no longer to be had.
            if (today <= end.AddDays(90) && proofs.DueOf(control) is { State: not ProofState.Done } due)
                dues.Add(new(ControlDueKind.Prove, control, due.From, due.To, $"Jars after {title}: did it work?", due.State == ProofState.Overdue));
        }

        return [.. dues.OrderBy(due => due.To).ThenBy(due => due.Kind).ThenBy(due => due.Control.Entry)];
    }

    private static void AddDays(List<ControlDue> dues, Control control, ControlList controls, string title, DateOnly end, DateOnly today)
    {
        if ((control.Facts.WithdrawalDays ?? controls.WithdrawalDays(control.Facts.Agent)) is { } withdrawal && end.AddDays(withdrawal) is var over && over >= today && withdrawal > 0)
            dues.Add(new(ControlDueKind.WithdrawalOver, control, over, over, $"The withdrawal period of {title} is over.", false));
        if (controls.Find(control.Facts.Agent)?.DaysBeforeSupers is { } wait && end.AddDays((int)wait.Value) is var back && back >= today)
            dues.Add(new(ControlDueKind.SupersBack, control, back, back, $"Supers may go on again after {title}, unless your label says later.", false));
    }
}
