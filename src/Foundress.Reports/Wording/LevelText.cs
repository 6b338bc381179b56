using System.Globalization;

namespace Foundress.Reports.Wording;

/// <summary>Levels, intervals and chances as people read them. Levels are in mites per 100 bees.</summary>
public static class LevelText
{
    /// <summary>A level alone: two decimals below 10, one below 100. Use <see cref="Reading"/> wherever an interval is known.</summary>
    public static string Level(double per100, CultureInfo culture) => per100 switch
    {
        0 => "0",
        < 0.01 => "under " + 0.01.ToString("0.00", culture),
        < 9.995 => per100.ToString("0.00", culture),
        < 99.95 => per100.ToString("0.0", culture),
        _ => per100.ToString("0", culture),
    };

    /// <summary>An interval, for example "2.39 to 7.34".</summary>
    public static string Interval(double lower, double upper, CultureInfo culture) =>
        $"{Level(lower, culture)} to {Level(upper, culture)}";

    /// <summary>A level with its interval. A count of zero gives its upper limit and never claims that there are no mites.</summary>
    public static string Reading(double level, double lower, double upper, CultureInfo culture) => level == 0
        ? $"0 (upper limit {Level(upper, culture)})"
        : $"{Level(level, culture)} ({Interval(lower, upper, culture)})";

    /// <summary>A line's level without needless decimals, for example "3" or "2.5".</summary>
    public static string Line(double per100, CultureInfo culture) => per100.ToString("0.##", culture);

    /// <summary>A chance as a percentage, never rounded to a certainty.</summary>
    public static string Chance(double chance, CultureInfo culture) => chance switch
    {
        < 0.001 => "under " + 0.001.ToString("P1", culture),
        > 0.999 => "over " + 0.999.ToString("P1", culture),
        < 0.01 or > 0.99 => chance.ToString("P1", culture),
        _ => chance.ToString("P0", culture),
    };

    /// <summary>A day in ISO 8601.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
