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

    // What was given only in part fails as likely as not (product choice; no publication says how often).
    private const double FailureInPart = 0.5;

    /// <summary>What controls do to the bees.</summary>
    internal static IReadOnlyList<BeeEvent> BeeEvents(IReadOnlyList<ForecastControl> controls, FrameCounts frames) =>
        [.. controls.SelectMany(control => BeeEvents(control.Agent.Model, control.Start, control.End, frames))];

    /// <summary>What one control does to the bees; new queens are the caller's matter.</summary>
    /// <param name="model">What it does.</param>
    /// <param name="start">The first day.</param>
    /// <param name="end">The last day; the first again, or earlier, where it is not known.</param>
    /// <param name="frames">The usual shares of a split.</param>
    internal static IReadOnlyList<BeeEvent> BeeEvents(ControlModel model, DateOnly start, DateOnly end, FrameCounts frames) => model.Action switch
    {
        ControlAction.RemoveDroneBrood => [BeeEvent.DroneBroodTaken(start, model.DroneCellsRemoved?.Value ?? 0)],
        ControlAction.RemoveBrood => [BeeEvent.BroodTaken(start, model.WorkerCellsRemoved?.Value ?? 0)],
        ControlAction.StopLaying =>
        [
            BeeEvent.Queen(start, BeeEventKind.QueenCaged),
            BeeEvent.Queen(end > start ? end : start.AddDays((int)(model.LayingStops?.Value ?? 1)), BeeEventKind.QueenReleased),
        ],
        ControlAction.Split => [BeeEvent.Divided(start, model.BeesMoved?.Value ?? frames.SplitShareOfBees.Value, frames.SplitShareOfBrood.Value)],
        _ => [],
    };

    /// <summary>Mites that leave with bees or combs: whatever sits on or in them leaves in the same shares.</summary>
    internal static IReadOnlyList<MitesTaken> Taken(BeeCourse course) =>
        [.. course.Taken.Where(taken => taken.Day >= 0 && taken.Day < course.Days).Select(taken => new MitesTaken(taken.Day, taken.Adults, taken.WorkerBrood, taken.DroneBrood))];

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
            var failure = Math.Min(control.InPart ? Math.Max(model.FailureShare.Value, FailureInPart) : model.FailureShare.Value, 0.99);
            var effect = new ControlEffect(
                control.Start.DayNumber - first.DayNumber, days, Share(model.AdultKillPerDay.Value, weight), Share(model.BroodKillPerDay.Value, weight),
                model.LogSpread.Value, failure, model.FailureFactor.Value, model.HalfLife?.Value);
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
        // What was taken out is at work no longer, whatever is usual; on the day itself it was.
        if (control.WasStopped && given < usual)
            return (Math.Max(1, given), 1);
        if (given == 0 || (usual <= ShortDays && given <= usual))
            return (usual, 1);
        return usual <= ShortDays
            ? (given + usual, Math.Min(1, (double)usual / DaysBetweenDoses))
            : (given, 1);
    }

    // A share of the daily rate: doses with days of no effect between them.
    private static double Share(double kill, double weight) => weight == 1 ? kill : 1 - Math.Pow(1 - kill, weight);
}
