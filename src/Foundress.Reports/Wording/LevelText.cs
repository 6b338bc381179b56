using System.Globalization;
using Foundress.Book.Wording;

namespace Foundress.Reports.Wording;

/// <summary>Levels, intervals and chances as people read them. Levels are in mites per 100 bees.</summary>
public static class LevelText
{
    /// <summary>A level alone. Use <see cref="Reading"/> wherever an interval is known.</summary>
    public static string Level(double per100, CultureInfo culture) => per100 switch
    {
        0 => "0",
        < 0.005 => WordTexts.FormatUnder(Say.Level(0.01, culture)),
        _ => Say.Level(per100, culture),
    };

    /// <summary>An interval, for example "2.4 to 7.3"; a lower end that would round to 0.00 is 0.</summary>
    public static string Interval(double lower, double upper, CultureInfo culture) =>
        WordTexts.FormatFromTo(lower < 0.005 ? "0" : Level(lower, culture), Level(upper, culture));

    /// <summary>A level with its interval. A count of zero gives its upper limit and never claims that there are no mites.</summary>
    public static string Reading(double level, double lower, double upper, CultureInfo culture) => level == 0
        ? WordTexts.FormatZeroUpperLimit(Level(upper, culture))
        : WordTexts.FormatLevelInterval(Level(level, culture), Interval(lower, upper, culture));

    /// <summary>A line as it was set.</summary>
    public static string Line(double per100, CultureInfo culture) => Say.Line(per100, culture);

    /// <summary>A chance, never rounded to a certainty.</summary>
    /// <param name="chance">0 to 1.</param>
    /// <param name="culture">Whose numbers to write.</param>
    public static string Chance(double chance, CultureInfo culture) => Say.InHundred(Science.Chance.Of(chance), culture);

    /// <summary>Two days with what lies between them; one day by itself.</summary>
    internal static string Days(DateOnly from, DateOnly to) => from == to ? Say.Day(from) : WordTexts.FormatFromTo(Say.Day(from), Say.Day(to));
}
