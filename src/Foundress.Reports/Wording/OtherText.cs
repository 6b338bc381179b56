using System.Globalization;
using Foundress.Book.Judging;

namespace Foundress.Reports.Wording;

/// <summary>Counts on other scales as people read them, always with their unit.</summary>
public static class OtherText
{
    /// <summary>The rate with its interval and unit, for example "8.0 a day (5.1 to 11.9)". A count of zero gives its upper limit.</summary>
    public static string Reading(OtherReading reading, CultureInfo culture)
    {
        var (isFall, upper) = (reading.Kind == OtherKind.NaturalFall, LevelText.Level(reading.Rate.Upper, culture));
        if (reading.Rate.Value == 0)
            return isFall ? WordTexts.FormatZeroADay(upper) : WordTexts.FormatZeroPercent(upper);
        var (level, interval) = (LevelText.Level(reading.Rate.Value, culture), LevelText.Interval(reading.Rate.Lower, reading.Rate.Upper, culture));
        return isFall ? WordTexts.FormatLevelADay(level, interval) : WordTexts.FormatLevelPercent(level, interval);
    }

    /// <summary>The rate alone with its unit, for a mark: "8.0/day" or "12 %".</summary>
    public static string Brief(OtherReading reading, CultureInfo culture) => reading.Kind == OtherKind.NaturalFall
        ? WordTexts.FormatBriefADay(LevelText.Level(reading.Rate.Value, culture))
        : reading.Rate.Value.ToString("0", culture) + " %";

    /// <summary>Where it stands to the keeper's lines of that scale, in a few words.</summary>
    public static string Standing(OtherReading reading) => reading switch
    {
        { Standing: not null } => Words.Of(reading.Standing),
        { Voids.Count: > 0 } => WordTexts.Void,
        _ => WordTexts.NotJudged,
    };

    /// <summary>The range of all mites, or why there is none; empty for opened brood.</summary>
    public static string Total(OtherReading reading, CultureInfo culture) => reading switch
    {
        { Total: { } total } => WordTexts.FormatFromTo(Rough(total.Lowest, culture), Rough(total.Highest, culture)),
        { Kind: OtherKind.NaturalFall } => WordTexts.CannotBeTold,
        _ => string.Empty,
    };

    // Two figures: published factors differ tenfold.
    private static string Rough(double mites, CultureInfo culture)
    {
        if (mites < 10)
            return mites.ToString("0", culture);
        var unit = Math.Pow(10, Math.Floor(Math.Log10(mites)) - 1);
        return (Math.Round(mites / unit) * unit).ToString("#,0", culture);
    }
}
