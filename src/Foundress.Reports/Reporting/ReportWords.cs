using System.Globalization;
using Foundress.Book.Reporting;
using Foundress.Book.Wording;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Reporting;

/// <summary>Sentences that the text and the HTML report share.</summary>
internal static class ReportWords
{
    /// <summary>The banner of a demonstration.</summary>
    public static string Invented => ReportTexts.Invented;

    /// <summary>Head of the section on formulas and sources.</summary>
    public static string MadeHead => ReportTexts.MadeHead;

    /// <summary>Head of the section on limits.</summary>
    public static string LimitsHead => ReportTexts.LimitsHead;

    /// <summary>Head of the table of counts on other scales.</summary>
    public static string OthersHead => ReportTexts.OthersHead;

    /// <summary>Limits of every report.</summary>
    public static IReadOnlyList<string> Limits => [ReportTexts.LimitOfJar, ReportTexts.LimitOfZero, ReportTexts.LimitOfScales, ReportTexts.LimitOfHelp];

    /// <summary>What the numbers are and how sure.</summary>
    public static string Scale(SeasonReport report, CultureInfo culture) =>
        ReportTexts.FormatScale(Say.Percent(report.Confidence, culture));

    /// <summary>How many colonies live.</summary>
    public static string Living(ApiaryReport apiary, CultureInfo culture) =>
        Plural.Pick(apiary.LivingColonies, ReportTexts.FormatLiving(apiary.LivingColonies.ToString("0", culture)));

    /// <summary>A day's level with its interval, or why there is none.</summary>
    public static string Reading(DayTotal day, CultureInfo culture)
    {
        if (day is { Lower: { } lower, Upper: { } upper })
            return LevelText.Reading(day.Level, lower, upper, culture);
        return day.Jars == 1 ? ReportTexts.FormatOneJarSeeIt(LevelText.Level(day.Level, culture)) : ReportTexts.FormatNoInterval(LevelText.Level(day.Level, culture));
    }
}
