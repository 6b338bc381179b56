using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Book.Wording;
using Foundress.Science.Judging;

namespace Foundress.Web.Pages.Jars;

/// <summary>A jar's answer in short sentences.</summary>
public static class JarSaid
{
    /// <summary>The level in a few words; a count of zero gives what may still be there.</summary>
    public static string Level(JarReading reading, CultureInfo culture) => reading.Facts.Mites == 0
        ? JarTexts.FormatNoneFoundUpTo(Say.Level(reading.Interval.Upper.Per100Bees, culture))
        : JarTexts.FormatLevelPer100(Say.Level(reading.Level.Per100Bees, culture));

    /// <summary>The interval as a sentence.</summary>
    public static string Interval(JarReading reading, CultureInfo culture)
    {
        var (interval, sure) = (reading.Interval, Say.Percent(reading.Interval.Confidence, culture).Replace(' ', '\u00a0'));
        return reading.Facts.Mites == 0
            ? JarTexts.FormatMayCarryUpTo(Say.Level(interval.Upper.Per100Bees, culture), sure)
            : JarTexts.FormatLikelyBetween(Say.Level(interval.Lower.Per100Bees, culture), Say.Level(interval.Upper.Per100Bees, culture), sure);
    }

    /// <summary>The chance of being over the line as a sentence; null when the jar is not judged.</summary>
    public static string? Chance(JarReading reading, CultureInfo culture) => reading is { OverLine: { } over, Lines: { } lines }
        ? JarTexts.FormatChanceOverLine(Say.Line(lines.Deciding, culture), Say.InHundred(over, culture))
        : null;

    /// <summary>Where it stands, in two or three words.</summary>
    public static string Standing(Standing? standing) => standing switch
    {
        Science.Judging.Standing.Above => JarTexts.AboveLine,
        Science.Judging.Standing.Below => JarTexts.BelowLine,
        Science.Judging.Standing.Unclear => JarTexts.NotSettled,
        _ => JarTexts.NotJudged,
    };
}
