using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Choosing;

/// <summary>What earlier controls say of a control.</summary>
internal static class HistoryReasons
{
    internal static void Find(ControlAgent agent, Situation situation, ControlList controls, Reasons reasons)
    {
        var courses = (situation.Courses ?? []).Where(course => course.Start <= situation.Start).ToArray();
        var running = courses.Where(course => course.RanOn(situation.Start) && course.End != situation.Start).ToArray();
        var mode = controls.ModeOf(agent);
        foreach (var sentence in running.Where(course => controls.Find(course.Agent) is { } other && other.ModeId == agent.ModeId && !agent.IsNonChemical).Select(course => SameKind(course, controls)).Distinct())
            reasons.Against(Ground.Interval, sentence);
        foreach (var sentence in running.Where(course => controls.Find(course.Agent) is not { } other || (other.ModeId != agent.ModeId && !other.IsNonChemical)).Select(course => Other(course, controls)).Distinct())
            reasons.Note(sentence);

        if (agent.MinimumInterval is { Value: > 0 } interval && courses.Where(course => course.Agent == agent.Id && !running.Contains(course)).MaxBy(Over) is { } last)
        {
            var from = Over(last).AddDays((int)interval.Value);
            if (situation.Start < from)
                reasons.Against(Ground.Interval, ChoosingTexts.FormatTooSoon(Say.Day(Over(last)), Say.Day(from), interval.Value.ToString("0", CultureInfo.CurrentCulture)), interval.Source.Text);
        }

        if (situation.Reduced?.FirstOrDefault(one => one.ModeId == agent.ModeId) is { } reduced)
            reasons.Against(Ground.Rotation, ChoosingTexts.FormatReducedEffect(controls.TitleOf(reduced.Agent), Say.Day(reduced.Start), mode.Title));

        if (!mode.Rotates)
            return;
        var before = courses.Where(course => controls.Find(course.Agent) is { IsNonChemical: false } && !running.Contains(course)).MaxBy(Over);
        if (before is not null && controls.Find(before.Agent)!.ModeId == agent.ModeId)
            reasons.Against(Ground.Rotation, $"{ChoosingTexts.FormatSameGroup(mode.Title, controls.TitleOf(before.Agent), Say.Day(Over(before)))} {mode.Text}", mode.Source.Text);
    }

    // One whose end is known is told with it: the day looked at may lie in the past.
    private static string SameKind(Course course, ControlList controls) => course.End is { } end
        ? ChoosingTexts.FormatSameKindUntil(controls.TitleOf(course.Agent), Say.Day(end))
        : ChoosingTexts.FormatSameKindStill(controls.TitleOf(course.Agent));

    private static string Other(Course course, ControlList controls) => course.End is { } end
        ? ChoosingTexts.FormatOtherUntil(controls.TitleOf(course.Agent), Say.Day(end))
        : ChoosingTexts.FormatOtherStill(controls.TitleOf(course.Agent));

    private static DateOnly Over(Course course) => course.End ?? course.PlannedEnd ?? course.Start;
}
