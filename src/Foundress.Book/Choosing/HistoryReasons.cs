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
        foreach (var name in running.Where(course => controls.Find(course.Agent) is { } other && other.ModeId == agent.ModeId && !agent.IsNonChemical).Select(course => AtWork(course, controls, ", of the same kind,")).Distinct())
            reasons.Against(Ground.Interval, $"{name}.");
        foreach (var name in running.Where(course => controls.Find(course.Agent) is not { } other || (other.ModeId != agent.ModeId && !other.IsNonChemical)).Select(course => AtWork(course, controls, string.Empty)).Distinct())
            reasons.Note($"{name}: do not mix, and let it end first unless both labels allow it.");

        if (agent.MinimumInterval is { Value: > 0 } interval && courses.Where(course => course.Agent == agent.Id && !running.Contains(course)).MaxBy(Over) is { } last)
        {
            var from = Over(last).AddDays((int)interval.Value);
            if (situation.Start < from)
                reasons.Against(Ground.Interval, $"It was last over on {Say.Day(Over(last))}; the next use is usual from {Say.Day(from)} on ({interval.Value:0} days).", interval.Source.Text);
        }

        if (situation.Reduced?.FirstOrDefault(one => one.ModeId == agent.ModeId) is { } reduced)
            reasons.Against(Ground.Rotation, $"The jars after {reduced.Title} of {Say.Day(reduced.Start)} showed a reduced effect of {mode.Title} in this apiary: resistance is possible. A test of the mites, or a later proof that it works, would lift this.");

        if (!mode.Rotates)
            return;
        var before = courses.Where(course => controls.Find(course.Agent) is { IsNonChemical: false } && !running.Contains(course)).MaxBy(Over);
        if (before is not null && controls.Find(before.Agent)!.ModeId == agent.ModeId)
            reasons.Against(Ground.Rotation, $"The same group, {mode.Title}, was used last time ({controls.TitleOf(before.Agent)}, over on {Say.Day(Over(before))}). Take another group next. {mode.Text}", mode.Source.Text);
    }

    // One whose end is known is told with it: the day looked at may lie in the past.
    private static string AtWork(Course course, ControlList controls, string kind) => course.End is { } end
        ? $"{controls.TitleOf(course.Agent)}{kind} is at work until {Say.Day(end)}"
        : $"{controls.TitleOf(course.Agent)}{kind} is still at work";

    private static DateOnly Over(Course course) => course.End ?? course.PlannedEnd ?? course.Start;
}
