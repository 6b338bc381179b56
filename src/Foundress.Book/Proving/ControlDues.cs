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
            {
                var text = ProvingTexts.FormatTakeOut(title, Say.Colonies(open.Length));
                dues.Add(new(ControlDueKind.TakeOut, control, planned, planned, planned < today ? $"{text} {ProvingTexts.LeftTooLong}" : text, planned < today));
            }

            var ends = courses.Select(course => course.End ?? course.PlannedEnd).OfType<DateOnly>().ToArray();
            if (ends.Length == 0)
                continue;
            var end = ends.Max();
            AddDays(dues, control, controls, title, end, today);
            // A proof long past its time is no longer to be had.
            if (today <= end.AddDays(90) && proofs.DueOf(control) is { State: not ProofState.Done } due)
                dues.Add(new(ControlDueKind.Prove, control, due.From, due.To, ProvingTexts.FormatJarsAfter(title), due.State == ProofState.Overdue));
        }

        return [.. dues.OrderBy(due => due.To).ThenBy(due => due.Kind).ThenBy(due => due.Control.Entry)];
    }

    private static void AddDays(List<ControlDue> dues, Control control, ControlList controls, string title, DateOnly end, DateOnly today)
    {
        if ((control.Facts.WithdrawalDays ?? controls.WithdrawalDays(control.Facts.Agent)) is { } withdrawal && end.AddDays(withdrawal) is var over && over >= today && withdrawal > 0)
            dues.Add(new(ControlDueKind.WithdrawalOver, control, over, over, ProvingTexts.FormatWithdrawalOver(title), false));
        if (controls.Find(control.Facts.Agent)?.DaysBeforeSupers is { } wait && end.AddDays((int)wait.Value) is var back && back >= today)
            dues.Add(new(ControlDueKind.SupersBack, control, back, back, ProvingTexts.FormatSupersBack(title), false));
    }
}
