namespace Foundress.Science.Dynamics.Bees;

/// <summary>A time within the season when little is to be had and the queen lays less: a dry summer, the rains.</summary>
public readonly record struct Dearth
{
    /// <summary>A dearth.</summary>
    /// <param name="middle">Its middle, as a day of the year in the north, 1 to 365.</param>
    /// <param name="length">Days from its beginning to its end, 1 to 300.</param>
    /// <param name="depth">The share by which laying is less in its middle, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public Dearth(double middle, double length, double depth)
    {
        if (middle is not (>= 1 and <= SeasonWindow.YearDays))
            throw new ArgumentOutOfRangeException(nameof(middle), middle, "The middle of a dearth is a day of the year from 1 to 365.");
        if (length is not (>= 1 and <= 300))
            throw new ArgumentOutOfRangeException(nameof(length), length, "A dearth lasts 1 to 300 days.");
        if (depth is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(depth), depth, "The depth of a dearth lies between 0 (none) and 1 (no laying).");
        (Middle, Length, Depth) = (middle, length, depth);
    }

    /// <summary>Its middle, as a day of the year in the north.</summary>
    public double Middle { get; }

    /// <summary>Days from its beginning to its end.</summary>
    public double Length { get; }

    /// <summary>The share by which laying is less in its middle.</summary>
    public double Depth { get; }

    /// <summary>The share of laying that is left on a day, 1 outside the dearth.</summary>
    internal double Left(double dayOfYear)
    {
        if (Length == 0)
            return 1d;
        double away = dayOfYear - Middle + (SeasonWindow.YearDays / 2d);
        away = Math.Abs(away - (SeasonWindow.YearDays * Math.Floor(away / SeasonWindow.YearDays)) - (SeasonWindow.YearDays / 2d));
        return 1d - (Depth * (1d - SeasonWindow.Step(2d * away / Length)));
    }
}
