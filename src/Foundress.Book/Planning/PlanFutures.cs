using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Forecasting;
using Foundress.Book.Forecasts;
using Foundress.Knowledge;
using Foundress.Science.Dynamics;
using Foundress.Science.Dynamics.Bees;
using Foundress.Science.Forecasting;

namespace Foundress.Book.Planning;

/// <summary>The courses of colonies under plans: bees as controls leave them, with the kills of the others on top.</summary>
/// <remarks>Courses with other bees are kept while there is room: many plans share them. Safe for concurrent use.</remarks>
internal sealed class PlanFutures(KnowledgeBase knowledge, IReadOnlyList<ColonyHistory> histories, IReadOnlyList<ColonyBees> bees, DateOnly to)
{
    private const int MostKept = 600;
    private const int SealedDays = MiteBiology.WorkerSealedDays;

    private readonly Dictionary<(int Colony, string Husbandry), ColonyDays> _kept = [];

    internal IReadOnlyList<ColonyHistory> Histories => histories;

    /// <summary>The course of a colony under a plan.</summary>
    internal ColonyDays Days(int colony, IReadOnlyList<PlanUse> plan)
    {
        var days = WithBees(colony, plan);
        ControlEffect[] kills = [.. plan.Where(use => use.Kill is not null).Select(use => use.Kill!.Value)];
        return days.With(kills);
    }

    /// <summary>Whether there is sealed brood in a colony under a plan on a day.</summary>
    internal BroodState Brood(int colony, IReadOnlyList<PlanUse> plan, DateOnly on)
    {
        var course = WithBees(colony, plan).Bees;
        var day = Math.Clamp(on.DayNumber - course.FirstDay.DayNumber, 0, course.Days - 1);
        var cells = 0.0;
        for (var from = Math.Max(0, day - SealedDays + 1); from <= day; from++)
        {
            var left = 1.0;
            foreach (var taken in course.Taken)
            {
                if (taken.Day >= from && taken.Day <= day)
                    left *= 1 - taken.WorkerBrood;
            }

            cells += course.WorkerSealed[from] * left;
        }

        return cells < knowledge.Controls.Planning.SealedCells.Value ? BroodState.None : BroodState.Some;
    }

    private ColonyDays WithBees(int colony, IReadOnlyList<PlanUse> plan)
    {
        var key = string.Empty;
        foreach (var use in plan)
        {
            if (use.IsHusbandry)
                key += string.Create(CultureInfo.InvariantCulture, $"{use.Candidate.Control}/{use.Candidate.Start} ");
        }

        var history = histories[colony].Days;
        if (key.Length == 0)
            return history;
        lock (_kept)
        {
            if (_kept.TryGetValue((colony, key), out var kept))
                return kept;
        }

        var known = bees[colony];
        BeeEvent[] events =
        [
            .. known.Events
                .Concat(plan.Where(use => use.IsHusbandry).SelectMany(use => ControlEffects.BeeEvents(use.Agent.Model, use.Start, use.End, knowledge.Bees.Frames)))
                .Where(one => one.On <= to)
                .OrderBy(one => one.On),
        ];
        var course = BeeCourses.Of(known.Season, known.Sightings, events, history.Bees.FirstDay, to);
        var days = ColonyDays.Of(course, history.Biology, known.Season.Site.Hemisphere, history.Controls.ToArray(), ControlEffects.Taken(course));
        lock (_kept)
        {
            if (_kept.Count >= MostKept)
                _kept.Clear();
            _kept[(colony, key)] = days;
        }

        return days;
    }
}
