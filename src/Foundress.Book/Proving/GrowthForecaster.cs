using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Proving;

/// <summary>
/// What would have become of the level without a control: the forecast made the day before its start from a book that does
/// not hold the control. Jars after that day are not used. Where no untreated colonies stand beside the treated ones it takes their place.
/// </summary>
/// <remarks>The median growth of the colonies with jars before and after is averaged on the scale of logarithms. Their spread is not made smaller by their number: season and place are the same for all.</remarks>
/// <param name="entries">Every entry of the book.</param>
/// <param name="state">What the same book says today.</param>
/// <param name="knowledge">Everything known.</param>
/// <param name="options">How the forecasts are worked out; how far they look is set here.</param>
public sealed class GrowthForecaster(IEnumerable<Entry> entries, BookState state, KnowledgeBase knowledge, ForecastOptions? options = null)
{
    // Ninety courses in a hundred lie within this many standard deviations of the middle, on either side.
    private const double NinetyInHundred = 1.6448536269514722;

    /// <summary>The growth without a use of a control.</summary>
    /// <param name="control">The use.</param>
    /// <returns>Null when no colony has jars before and after, or when the book does not know where they stood.</returns>
    public GrowthForecast? Of(Control control)
    {
        var eve = control.Facts.Start.AddDays(-1);
        var told = new ControlProofs(state, knowledge, eve, CultureInfo.InvariantCulture).Of(control).Colonies.Where(colony => colony.Why is null).ToArray();
        if (told.Length == 0 || !state.Apiaries.TryGetValue(told[0].Colony.ApiaryOn(eve), out var apiary))
            return null;
        var last = told.Max(colony => colony.After[0].Facts.On);
        var ahead = Math.Clamp(last.DayNumber - eve.DayNumber + 3, 1, 366);
        var without = new Ledger();
        without.Add(entries.Where(entry => !Tells(entry, control.Id)));
        var fans = new ApiaryForecaster(without.State, knowledge, CultureInfo.InvariantCulture).Of(apiary, eve, (options ?? new ForecastOptions()) with { Ahead = ahead, Suppose = null })
            .Colonies.ToDictionary(colony => colony.Colony, colony => colony.Fan);
        var growths = told.Where(colony => fans.ContainsKey(colony.Colony.Id))
            .Select(colony => Growth(fans[colony.Colony.Id], colony.Before[0].Facts.On, colony.After[0].Facts.On))
            .OfType<(double Log, double Variance)>()
            .ToArray();
        return growths.Length == 0
            ? null
            : new GrowthForecast(Math.Exp(growths.Average(growth => growth.Log)), Math.Min(2, Math.Sqrt(growths.Average(growth => growth.Variance))));
    }

    // A forecast reckons with controls that are planned, so the use itself must not stand in its book.
    private static bool Tells(Entry entry, ControlId control) =>
        entry.Kind is RecordKinds.Control or RecordKinds.ControlEnded
        && RecordJson.TryRead(entry.Kind, entry.Payload, out _) switch
        {
            ControlRecord use => use.Control == control,
            ControlEnded ended => ended.Control == control,
            _ => false,
        };

    // The fan's spread on a day is that of the level before and of the growth since: what is more is the growth's.
    private static (double Log, double Variance)? Growth(IReadOnlyList<FanPoint> fan, DateOnly from, DateOnly to)
    {
        if (At(fan, from) is not { } before || At(fan, to) is not { } after)
            return null;
        return (after.Log - before.Log, Math.Max(0, (after.Spread * after.Spread) - (before.Spread * before.Spread)));
    }

    // A fan has a point every few days: the nearest stands for the day.
    private static (double Log, double Spread)? At(IReadOnlyList<FanPoint> fan, DateOnly day)
    {
        FanPoint? nearest = null;
        foreach (var point in fan)
        {
            if (nearest is not { } known || Math.Abs(point.On.DayNumber - day.DayNumber) < Math.Abs(known.On.DayNumber - day.DayNumber))
                nearest = point;
        }

        return nearest is { Low: > 0, Middle: > 0 } found && Math.Abs(found.On.DayNumber - day.DayNumber) <= 7
            ? (Math.Log(found.Middle), Math.Log(found.High / found.Low) / (2 * NinetyInHundred))
            : null;
    }
}
