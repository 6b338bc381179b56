using Foundress.Book.Controls;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Planning;

/// <summary>What is due because of plans that were kept.</summary>
public static class PlannedDues
{
    /// <summary>Plans are searched by the week, so a control is as planned for a week from its day on.</summary>
    public const int Within = 6;

    // A use this near its planned day is taken as the planned one (product choice).
    private const int Near = 21;

    // What was not done this long after its day is no longer a plan.
    private const int Gone = 28;

    /// <summary>Every planned control that was not recorded yet, earliest first. Those long past are left out.</summary>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">The known controls.</param>
    /// <param name="today">The reader's day.</param>
    public static IReadOnlyList<PlannedDue> For(BookState state, KnowledgeBase knowledge, DateOnly today)
    {
        var controls = ControlList.Of(state, knowledge);
        var dues = new List<PlannedDue>();
        foreach (var plan in state.ControlPlans)
        {
            foreach (var use in plan.Facts.Uses)
            {
                var to = use.Start.AddDays(Within);
                if (to.AddDays(Gone) < today || IsDone(plan, use.Agent, use.Start, state))
                    continue;
                dues.Add(new PlannedDue(
                    $"planned:{plan.Entry.Id}:{use.Agent}:{Say.Day(use.Start)}", plan, use, use.Start, to,
                    $"Planned: {controls.TitleOf(use.Agent)} ({Say.Count(plan.Facts.Colonies.Count, "colony", "colonies")}), from about {Say.Day(use.Start)}. Look at jars, weather and brood, and read the label first."));
            }
        }

        return [.. dues.OrderBy(due => due.From).ThenBy(due => due.Key, StringComparer.Ordinal)];
    }

    private static bool IsDone(ControlPlan plan, string agent, DateOnly start, BookState state) =>
        plan.Facts.Colonies.Any(colony => state.CoursesOf(colony).Any(course => course.Agent == agent && Math.Abs(course.Start.DayNumber - start.DayNumber) <= Near));
}
