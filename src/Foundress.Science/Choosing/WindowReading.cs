namespace Foundress.Science.Choosing;

/// <summary>A limit held against the temperatures of an application.</summary>
/// <param name="Bound">The limit.</param>
/// <param name="FirstOutside">The first day outside; null when none is.</param>
/// <param name="Degrees">The reading of that day; the reading nearest to the limit when none is outside; null when no day is known.</param>
/// <param name="DaysOutside">How many days are outside.</param>
/// <param name="DaysUnknown">How many days nothing is known of.</param>
/// <param name="IsUsual">Whether the reading is a usual one rather than foretold.</param>
public sealed record WindowReading(TemperatureBound Bound, DateOnly? FirstOutside, double? Degrees, int DaysOutside, int DaysUnknown, bool IsUsual)
{
    /// <summary>Holds a limit against the days of an application.</summary>
    /// <param name="bound">The limit.</param>
    /// <param name="temperatures">What is known of the weather.</param>
    /// <param name="start">First day.</param>
    /// <param name="days">Days at work, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="days"/> is below 1.</exception>
    public static WindowReading Of(TemperatureBound bound, ITemperatures temperatures, DateOnly start, int days)
    {
        ArgumentNullException.ThrowIfNull(temperatures);
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        int counted = Math.Min(days, bound.FirstDays ?? days);
        (DateOnly Day, double Degrees)? first = null;
        (DateOnly Day, double Degrees)? nearest = null;
        int outside = 0;
        int unknown = 0;
        for (int i = 0; i < counted; i++)
        {
            DateOnly day = start.AddDays(i);
            if (temperatures.On(day) is not { } known)
            {
                unknown++;
                continue;
            }

            double degrees = bound.Of(known);
            if (nearest is not { } so || (bound.IsLeast ? degrees < so.Degrees : degrees > so.Degrees))
                nearest = (day, degrees);
            if (!bound.IsBrokenBy(degrees))
                continue;
            outside++;
            first ??= (day, degrees);
        }

        var told = first ?? nearest;
        return new(bound, first?.Day, told?.Degrees, outside, unknown, told is { } shown && temperatures.IsUsual(shown.Day));
    }
}
