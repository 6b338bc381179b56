using Foundress.Book.Controls;
using Foundress.Book.Forecasting;
using Foundress.Book.Judging;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Dynamics;
using Foundress.Science.Dynamics.Bees;
using Foundress.Science.Estimation;
using Foundress.Science.Forecasting;

namespace Foundress.Book.Forecasts;

/// <summary>Puts what the book says of a colony together into a history that a forecast can follow: bees, controls, and counts of every kind.</summary>
internal sealed class ColonyRecordReader(BookState state, BroodSeasons seasons, OtherCountReader others)
{
    // The two ends of a published range of factors, as a spread of logarithms.
    private const double NinetyPercent = 2 * 1.645;

    private readonly KnowledgeBase _knowledge = seasons.Knowledge;
    private readonly ControlList _controls = ControlList.Of(state, seasons.Knowledge);

    internal ColonyHistory Read(Colony colony, DateOnly start, DateOnly to, DateOnly asOf, Supposition? supposed, out ColonyDays? future)
    {
        var bees = ColonyBees.Of(state, seasons, colony.Id, start, to);
        future = supposed is null ? null : Supposed(bees, bees.Season.Site.Hemisphere, Controls(colony, start), supposed, start, to);
        return Read(colony, bees, start, asOf);
    }

    /// <summary>The history of a colony whose bees were reckoned already, from the same first day on.</summary>
    internal ColonyHistory Read(Colony colony, ColonyBees bees, DateOnly start, DateOnly asOf)
    {
        var hemisphere = bees.Season.Site.Hemisphere;
        var controls = Controls(colony, start);
        var days = Days(bees.Course, hemisphere, controls, start);
        var begun = bees.Events.Where(one => one.Kind == BeeEventKind.Began && one.On > start && one.On <= asOf).Select(one => one.On).DefaultIfEmpty(start).Max();
        return new ColonyHistory(
            days, begun.DayNumber - start.DayNumber, _knowledge.Mites.UsualLevel(begun, hemisphere).PerBee,
            [.. Counts(colony, begun, start, asOf).OrderBy(count => count.Day)],
            [.. Kills(controls, start).Select(kill => kill.Key)]);
    }

    private ColonyDays Supposed(ColonyBees bees, Hemisphere hemisphere, IReadOnlyList<ForecastControl> controls, Supposition supposed, DateOnly start, DateOnly to)
    {
        var control = new ForecastControl(supposed.Agent, supposed.On, supposed.End);
        BeeEvent[] events = [.. bees.Events.Concat(ControlEffects.BeeEvents([control], _knowledge.Bees.Frames)).OrderBy(one => one.On)];
        var course = events.Length == bees.Events.Count ? bees.Course : BeeCourses.Of(bees.Season, bees.Sightings, events, start, to);
        // Behind those of the record, so that the particles keep what they know of these.
        ControlEffect[] kills = [.. Kills(controls, start).Select(kill => kill.Effect), .. ControlEffects.Kills([control], start).Select(kill => kill.Effect)];
        return ColonyDays.Of(course, _knowledge.Mites.Life, hemisphere, kills[..Math.Min(kills.Length, ColonyDays.MostControls)], ControlEffects.Taken(course));
    }

    private ColonyDays Days(BeeCourse course, Hemisphere hemisphere, IReadOnlyList<ForecastControl> controls, DateOnly start) =>
        ColonyDays.Of(course, _knowledge.Mites.Life, hemisphere, [.. Kills(controls, start).Select(kill => kill.Effect)], ControlEffects.Taken(course));

    private static IReadOnlyList<(ControlEffect Effect, string Key)> Kills(IReadOnlyList<ForecastControl> controls, DateOnly start)
    {
        var kills = ControlEffects.Kills(controls, start);
        // One place is left for a control that is only supposed.
        return kills.Count < ColonyDays.MostControls ? kills : [.. kills.Skip(kills.Count - ColonyDays.MostControls + 1)];
    }

    private List<ForecastControl> Controls(Colony colony, DateOnly start)
    {
        var controls = new List<ForecastControl>();
        foreach (var course in state.CoursesOf(colony.Id))
        {
            if (_controls.Find(course.Agent) is not { } agent)
                continue;
            var end = course.End ?? course.PlannedEnd ?? course.Start.AddDays((int)agent.Days.Value);
            if (end < course.Start)
                end = course.Start;
            // What is given once works on after the day it was given, unless somebody said that it was stopped.
            var stopped = course.Ending == CourseEnding.StoppedEarly || (course.WasCutShort && course.Ending != CourseEnding.Partial);
            if (end >= start)
                controls.Add(new ForecastControl(agent, course.Start, end, stopped, course.Ending == CourseEnding.Partial));
        }

        return controls;
    }

    private IEnumerable<Evidence> Counts(Colony colony, DateOnly begun, DateOnly start, DateOnly asOf)
    {
        bool Holds(DateOnly on) => on >= begun && on <= asOf;
        int Day(DateOnly on) => on.DayNumber - start.DayNumber;
        foreach (var jar in state.JarsOf(colony.Id))
        {
            if (Holds(jar.Facts.On) && _knowledge.Methods.TryGet(jar.Facts.Method, out var method) && method is { IsJar: true, IsHistoric: false })
                yield return Evidence.Jar(Day(jar.Facts.On), jar.Facts.Mites, jar.Facts.Bees.AsBeeCount, HistoryBuilder.RecoveryOf(_knowledge, method.Id), _knowledge.Mites.Priors.JarSize);
        }

        foreach (var fall in state.FallsOf(colony.Id))
        {
            // A fall that is void says nothing of the mites on the bees; one without a published range cannot be used.
            if (!Holds(fall.Facts.On) || others.Read(fall.Facts, state.Apiaries.GetValueOrDefault(colony.ApiaryOn(fall.Facts.On))) is not { Total: { } total, Rate: var rate })
                continue;
            var counted = fall.Facts.Days * (fall.Facts.ShareCounted ?? 1);
            var perDay = Math.Max(fall.Facts.Mites, 0.5) / counted;
            var factor = Math.Sqrt(Math.Max(total.Lowest, 1) * Math.Max(total.Highest, 1)) / perDay;
            var spread = Math.Clamp(Math.Log(Math.Max(total.Highest, 1) / Math.Max(total.Lowest, 1)) / NinetyPercent, _knowledge.Mites.FallLogSpread.Value, 3);
            if (double.IsFinite(factor) && factor > 0 && rate.Confidence > 0)
                yield return Evidence.Fall(Day(fall.Facts.On), fall.Facts.Mites, counted, factor, spread);
        }

        foreach (var brood in state.BroodOf(colony.Id))
        {
            if (Holds(brood.Facts.On) && brood.Facts is { Brood: BroodKind.Worker, Cells: > 0 } && brood.Facts.Infested <= brood.Facts.Cells)
                yield return Evidence.WorkerCells(Day(brood.Facts.On), brood.Facts.Infested, brood.Facts.Cells, _knowledge.Mites.CellsSize.Value);
        }
    }
}
