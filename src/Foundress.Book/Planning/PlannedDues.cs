using Foundress.Book.Choosing;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Records;
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
                    $"planned:{plan.Entry.Id}:{use.Agent}:{Say.IsoDay(use.Start)}", plan, use, use.Start, to,
                    string.Join(' ', [
                        PlanTexts.FormatPlanned(controls.TitleOf(use.Agent), Say.Colonies(plan.Facts.Colonies.Count), Say.Day(use.Start)),
                        .. Since(plan, use, state, knowledge, controls, today)])));
            }
        }

        return [.. dues.OrderBy(due => due.From).ThenBy(due => due.Key, StringComparer.Ordinal)];
    }

    // What has come to speak against a planned control since, and what makes the plan old.
    private static List<string> Since(ControlPlan plan, PlannedUse use, BookState state, KnowledgeBase knowledge, ControlList controls, DateOnly today)
    {
        var facts = plan.Facts;
        ColonyId[] living = [.. facts.Colonies.Where(id => state.Colonies.TryGetValue(id, out var colony) && colony.LivesOn(today))];
        var day = use.Start < today ? today : use.Start;
        var parts = new List<string>();
        if (living.Length == 0)
            return [PlanTexts.NoneLives];
        if (controls.Find(use.Agent) is { } agent && day <= today.AddDays(Situations.FreshDays) && state.Apiaries.TryGetValue(facts.Apiary, out var apiary))
        {
            var situation = PlanSituations.On(apiary, living, state, knowledge, day, new PlanOptions());
            var offer = ControlChoices.For(agent, situation, controls);
            if (offer.Against.Count > 0)
                parts.Add(PlanTexts.FormatNowRuledOut(string.Join(" ", offer.Against.Select(reason => reason.Text))));
        }

        var jars = living.Sum(id => state.JarsOf(id).Count(jar => jar.Entry.Clock > plan.Entry.Clock && jar.Facts.On >= facts.Made));
        var uses = living.SelectMany(state.CoursesOf).Where(course => course.Control.Entry.Clock > plan.Entry.Clock && facts.Uses.All(own => own.Agent != course.Agent)).Select(course => course.Control.Id).Distinct().Count();
        if (jars + uses > 0)
            parts.Add(Said(jars, uses, Say.Day(facts.Made)));
        return parts;
    }

    private static string Said(int jars, int uses, string made) => (jars, uses) switch
    {
        (0, _) => Plural.Pick(uses, PlanTexts.FormatCameControls(uses, made)),
        (_, 0) => Plural.Pick(jars, PlanTexts.FormatCameJars(jars, made)),
        _ => PlanTexts.FormatCameBoth(Say.Jars(jars), Plural.Pick(uses, PlanTexts.FormatOtherControls(uses)), made),
    };

    private static bool IsDone(ControlPlan plan, string agent, DateOnly start, BookState state) =>
        plan.Facts.Colonies.Any(colony => state.CoursesOf(colony).Any(course => course.Agent == agent && Math.Abs(course.Start.DayNumber - start.DayNumber) <= Near));
}
