namespace Foundress.Science.Dynamics.Bees;

/// <summary>
/// A season that opens, is full, fades and closes, in days of the year as in the north (1 is 1 January). It rises and falls
/// smoothly and is exactly 0 outside.
/// </summary>
/// <remarks>The edges are cubic steps, so that a season has a first and a last day, as the tail of a logistic curve has not.</remarks>
public readonly record struct SeasonWindow
{
    /// <summary>Days in a year as the season tables count them.</summary>
    internal const int YearDays = 365;

    /// <summary>A season.</summary>
    /// <param name="opens">The day before which it is 0, -182 to 365; a negative day lies in the year before.</param>
    /// <param name="full">The day from which it is 1.</param>
    /// <param name="fades">The day until which it is 1.</param>
    /// <param name="closes">The day from which it is 0 again, at most a year after it opened.</param>
    /// <exception cref="ArgumentOutOfRangeException">The days are not in this order, or span more than a year.</exception>
    public SeasonWindow(double opens, double full, double fades, double closes)
    {
        if (opens is not (>= -182 and <= YearDays))
            throw new ArgumentOutOfRangeException(nameof(opens), opens, "A season opens on a day from -182 to 365.");
        if (!(full >= opens && fades >= full && closes >= fades && closes - opens <= YearDays + 1e-9))
            throw new ArgumentOutOfRangeException(nameof(closes), closes, $"A season opens, is full, fades and closes in this order within one year; found {opens}, {full}, {fades}, {closes}.");
        (Opens, Full, Fades, Closes) = (opens, full, fades, closes);
    }

    /// <summary>The day it opens.</summary>
    public double Opens { get; }

    /// <summary>The day it is full.</summary>
    public double Full { get; }

    /// <summary>The day it begins to fade.</summary>
    public double Fades { get; }

    /// <summary>The day it closes.</summary>
    public double Closes { get; }

    /// <summary>How far the season is on a day: 0 outside it, 1 while it is full.</summary>
    /// <param name="dayOfYear">Day of the year as in the north.</param>
    public double On(double dayOfYear)
    {
        double day = dayOfYear - Opens;
        day = Opens + day - (YearDays * Math.Floor(day / YearDays));
        if (day < Full)
            return Step((day - Opens) / (Full - Opens));
        if (day <= Fades)
            return 1d;
        return day < Closes ? 1d - Step((day - Fades) / (Closes - Fades)) : 0d;
    }

    /// <summary>
    /// The season of a place with a later spring and an earlier autumn: the opening moves by one number of days, the closing by
    /// another, and what would be left of the full season is never negative.
    /// </summary>
    /// <param name="spring">Days later it opens and is full; negative is earlier.</param>
    /// <param name="autumn">Days earlier it fades and closes; negative is later.</param>
    public SeasonWindow Narrowed(double spring, double autumn)
    {
        double opens = Math.Clamp(Opens + spring, -182, YearDays);
        double full = Math.Max(Full + spring, opens);
        double closes = Math.Clamp(Closes - autumn, opens, opens + YearDays);
        full = Math.Min(full, closes);
        double fades = Math.Clamp(Fades - autumn, full, closes);
        return new(opens, full, fades, closes);
    }

    /// <summary>0 at 0, 1 at 1, level at both ends.</summary>
    internal static double Step(double x) => x <= 0d ? 0d : x >= 1d ? 1d : x * x * (3d - (2d * x));
}
