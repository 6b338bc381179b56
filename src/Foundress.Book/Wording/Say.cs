using System.Globalization;
using Foundress.Science;

namespace Foundress.Book.Wording;

/// <summary>Numbers as people read them.</summary>
public static class Say
{
    private static CultureInfo Near => Languages.Current.Near(CultureInfo.CurrentCulture);

    /// <summary>A level: one decimal from 1 up, two below, whole from 100.</summary>
    /// <param name="per100">Mites per 100 bees.</param>
    /// <param name="culture">The reader's culture.</param>
    public static string Level(double per100, CultureInfo culture) =>
        per100.ToString(per100 >= 99.95 ? "0" : per100 >= 0.995 ? "0.0" : "0.00", culture);

    /// <summary>A line as it was set: no more decimals than it has.</summary>
    public static string Line(double value, CultureInfo culture) => value.ToString("0.##", culture);

    /// <summary>A chance in words of the form "92 in 100", never 0 or 100.</summary>
    public static string InHundred(Chance chance, CultureInfo culture) => chance.Value switch
    {
        < 0.005 => SayTexts.LessThanOneIn100,
        > 0.995 => SayTexts.MoreThan99In100,
        var value => SayTexts.FormatInHundred(Math.Round(value * 100).ToString(culture)),
    };

    /// <summary>A whole percentage for a confidence, for example "95 %".</summary>
    public static string Percent(double share, CultureInfo culture) => (share * 100).ToString("0.#", culture) + " %";

    /// <summary>Growth of the natural logarithm of a level per day as a signed percentage: "+2.1 %".</summary>
    public static string Growth(double perDay, CultureInfo culture) => (100 * perDay).ToString("+0.0;−0.0;0.0", culture) + " %";

    /// <summary>A day as the language writes it, its month in letters: "1 Mar 2027".</summary>
    public static string Day(DateOnly day) => day.ToString(SayTexts.DayPattern, Near);

    /// <summary>A moment, by the clock it is given in: "1 Mar 2027, 07:52".</summary>
    public static string Moment(DateTimeOffset at) => SayTexts.FormatMoment(Day(DateOnly.FromDateTime(at.DateTime)), at.ToString("t", Near));

    /// <summary>A moment in UTC to the minute, the same for whoever reads it: "1 Mar 2027, 07:52 UTC".</summary>
    public static string MomentUtc(DateTimeOffset at) =>
        SayTexts.FormatMoment(Day(DateOnly.FromDateTime(at.UtcDateTime)), at.UtcDateTime.ToString("HH:mm", CultureInfo.InvariantCulture)) + " UTC";

    /// <summary>A day in ISO 8601, for what machines read and for keys.</summary>
    public static string IsoDay(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>"1 apiary", "3 apiaries".</summary>
    public static string Apiaries(int count) => Plural.Pick(count, SayTexts.FormatApiaries(count));

    /// <summary>"1 colony", "14 colonies".</summary>
    public static string Colonies(int count) => Plural.Pick(count, SayTexts.FormatColonies(count));

    /// <summary>"in 1 colony", "in 14 colonies": other languages bend the noun after "in".</summary>
    public static string InColonies(int count) => Plural.Pick(count, SayTexts.FormatInColonies(count));

    /// <summary>"1 jar", "8 jars".</summary>
    public static string Jars(int count) => Plural.Pick(count, SayTexts.FormatJars(count));

    /// <summary>"1 mite", "9 mites".</summary>
    public static string Mites(int count) => Plural.Pick(count, SayTexts.FormatMites(count));

    /// <summary>"1 bee", "300 bees".</summary>
    public static string Bees(int count) => Plural.Pick(count, SayTexts.FormatBees(count));

    /// <summary>"1 day", "21 days".</summary>
    public static string Days(int count) => Plural.Pick(count, SayTexts.FormatDays(count));

    /// <summary>"in 1 day", "in 21 days".</summary>
    public static string InDays(int count) => Plural.Pick(count, SayTexts.FormatInDays(count));

    /// <summary>"1 entry", "500 entries".</summary>
    public static string Entries(int count) => Plural.Pick(count, SayTexts.FormatEntries(count));

    /// <summary>Seconds as people say them: <c>1 min</c>, <c>90 s</c>, <c>4 min 30 s</c>.</summary>
    public static string Length(int seconds) => (seconds / 60, seconds % 60) switch
    {
        (0, var rest) => $"{rest} s",
        (var minutes, 0) => $"{minutes} min",
        (1, var rest) => $"{60 + rest} s",
        (var minutes, var rest) => $"{minutes} min {rest} s",
    };

    /// <summary>Names in a row: "1, 4 and 7", at most a few of them.</summary>
    public static string List(IReadOnlyList<string> names, int most = 6) => names.Count switch
    {
        0 => string.Empty,
        1 => names[0],
        _ when names.Count <= most => SayTexts.FormatAnd(string.Join(", ", names.Take(names.Count - 1)), names[^1]),
        _ => Plural.Pick(names.Count - most, SayTexts.FormatAndMore(string.Join(", ", names.Take(most)), names.Count - most)),
    };
}
