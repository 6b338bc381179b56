using System.Globalization;
using Foundress.Knowledge;
using Foundress.Science.Dynamics;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Book.Forecasting;

/// <summary>From the controls of a record to what they do to mites and bees in a course.</summary>
internal static class ControlEffects
{
    // Agents that work for a few days are given anew about this often when the record shows a longer time.
    private const int DaysBetweenDoses = 7;
    private const int ShortDays = 10;

    /// <summary>What controls do to the bees.</summary>
    internal static IReadOnlyList<BeeEvent> BeeEvents(IReadOnlyList<ForecastControl> controls, FrameCounts frames)
    {
        var events = new List<BeeEvent>();
        foreach (var control in controls)
        {
            var model = control.Agent.Model;
            switch (model.Action)
            {
                case ControlAction.RemoveDroneBrood:
                    events.Add(BeeEvent.DroneBroodTaken(control.Start, model.DroneCellsRemoved?.Value ?? 0));
                    break;
                case ControlAction.RemoveBrood:
                    events.Add(BeeEvent.BroodTaken(control.Start, model.WorkerCellsRemoved?.Value ?? 0));
                    break;
                case ControlAction.StopLaying:
                    events.Add(BeeEvent.Queen(control.Start, BeeEventKind.QueenCaged));
                    events.Add(BeeEvent.Queen(StopEnd(control), BeeEventKind.QueenReleased));
                    break;
                case ControlAction.Split:
                    events.Add(BeeEvent.Divided(control.Start, model.BeesMoved?.Value ?? frames.SplitShareOfBees.Value, frames.SplitShareOfBrood.Value));
                    break;
                default:
                    break;
            }
        }

        return events;
    }

    /// <summary>Mites that leave with bees or combs.</summary>
    internal static IReadOnlyList<MitesTaken> Taken(IReadOnlyList<ForecastControl> controls, FrameCounts frames, DateOnly first)
    {
        var taken = new List<MitesTaken>();
        foreach (var control in controls)
        {
            var model = control.Agent.Model;
            var day = control.Start.DayNumber - first.DayNumber;
            switch (model.Action)
            {
                case ControlAction.RemoveDroneBrood or ControlAction.RemoveBrood:
                    taken.Add(new(day, 0, model.WorkerCellsRemoved?.Value ?? 0, model.DroneCellsRemoved?.Value ?? 0));
                    break;
                case ControlAction.Split:
                    taken.Add(new(day, model.BeesMoved?.Value ?? frames.SplitShareOfBees.Value, frames.SplitShareOfBrood.Value, frames.SplitShareOfBrood.Value));
                    break;
                default:
                    break;
            }
        }

        return taken;
    }

    /// <summary>The controls that kill, with the name by which colonies of an apiary share their effect.</summary>
    internal static IReadOnlyList<(ControlEffect Effect, string Key)> Kills(IReadOnlyList<ForecastControl> controls, DateOnly first)
    {
        var kills = new List<(ControlEffect, string)>();
        foreach (var control in controls.OrderBy(one => one.Start).ThenBy(one => one.Agent.Id, StringComparer.Ordinal))
        {
            var model = control.Agent.Model;
            if (model.Action != ControlAction.Kill)
                continue;
            var (days, weight) = Span(control);
            var effect = new ControlEffect(
                control.Start.DayNumber - first.DayNumber, days, Share(model.AdultKillPerDay.Value, weight), Share(model.BroodKillPerDay.Value, weight),
                model.LogSpread.Value, Math.Min(model.FailureShare.Value, 0.99), model.FailureFactor.Value);
            // Applications of one agent that start within the same two weeks count as one and the same.
            var key = string.Create(CultureInfo.InvariantCulture, $"{control.Agent.Id} {(control.Start.DayNumber + 7) / 14}");
            if (effect.EndDay > 0)
                kills.Add((effect, key));
        }

        return kills;
    }

    private static (int Days, double Weight) Span(ForecastControl control)
    {
        var usual = (int)control.Agent.Model.Days.Value;
        var given = control.End.DayNumber - control.Start.DayNumber;
        if (given == 0 || (usual <= ShortDays && given <= usual))
            return (usual, 1);
        return usual <= ShortDays
            ? (given + usual, Math.Min(1, (double)usual / DaysBetweenDoses))
            : (given, 1);
    }

    // A share of the daily rate: doses with days of no effect between them.
    private static double Share(double kill, double weight) => weight == 1 ? kill : 1 - Math.Pow(1 - kill, weight);

    private static DateOnly StopEnd(ForecastControl control)
    {
        var given = control.End.DayNumber - control.Start.DayNumber;
        return control.Start.AddDays(given > 0 ? given : (int)(control.Agent.Model.LayingStops?.Value ?? 1));
    }
}
