using System.Globalization;
using Foundress.Book.Reporting;
using Foundress.Book.Wording;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Reporting;

/// <summary>Sentences that the text and the HTML report share.</summary>
internal static class ReportWords
{
    /// <summary>The banner of a demonstration.</summary>
    public const string Invented = "Invented data: these apiaries, colonies and counts were made up to show how a report looks.";

    /// <summary>Head of the section on formulas and sources.</summary>
    public const string MadeHead = "How this was made";

    /// <summary>Head of the section on limits.</summary>
    public const string LimitsHead = "What this report cannot say";

    /// <summary>Head of the table of counts on other scales.</summary>
    public const string OthersHead = "Counts on other scales, by colony";

    /// <summary>Limits of every report.</summary>
    public static IReadOnlyList<string> Limits { get; } =
    [
        "A jar is a sample of one colony's adult bees on one day. The interval says how far chance alone may carry the count; it does not hold for mites that the method left on the bees or for mites in sealed brood.",
        "A count of 0 does not mean that a colony has no mites: read its upper limit.",
        "Counts by different methods are on different scales and are not compared with a line set for another method.",
        "This is help for a decision, not the decision: product labels, local rules and licensed practice decide what may be used and when.",
    ];

    /// <summary>What the numbers are and how sure.</summary>
    public static string Scale(SeasonReport report, CultureInfo culture) =>
        $"Levels are mites per 100 adult bees, on the counting method's own scale. In brackets: the {Say.Percent(report.Confidence, culture)} interval. Dates are year-month-day.";

    /// <summary>How many colonies live.</summary>
    public static string Living(ApiaryReport apiary, CultureInfo culture) =>
        apiary.LivingColonies == 1 ? "1 living colony" : $"{apiary.LivingColonies.ToString("0", culture)} living colonies";

    /// <summary>A day's level with its interval, or why there is none.</summary>
    public static string Reading(DayTotal day, CultureInfo culture)
    {
        if (day is { Lower: { } lower, Upper: { } upper })
            return LevelText.Reading(day.Level, lower, upper, culture);
        return day.Jars == 1 ? $"{LevelText.Level(day.Level, culture)} (one jar, see it)" : $"{LevelText.Level(day.Level, culture)} (no interval)";
    }
}
