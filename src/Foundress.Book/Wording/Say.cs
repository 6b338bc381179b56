using System.Globalization;
using Foundress.Science;

namespace Foundress.Book.Wording;

/// <summary>Numbers as people read them.</summary>
public static class Say
{
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
        < 0.005 => "less than 1 in 100",
        > 0.995 => "more than 99 in 100",
        var value => string.Create(culture, $"{Math.Round(value * 100)} in 100"),
    };

    /// <summary>A whole percentage for a confidence, for example "95 %".</summary>
    public static string Percent(double share, CultureInfo culture) => (share * 100).ToString("0.#", culture) + " %";

    /// <summary>Growth of the natural logarithm of a level per day as a signed percentage: "+2.1 %".</summary>
    public static string Growth(double perDay, CultureInfo culture) => (100 * perDay).ToString("+0.0;−0.0;0.0", culture) + " %";

    /// <summary>A day in ISO 8601.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A number of things with its noun.</summary>
    public static string Count(int number, string one, string many) => number == 1 ? $"1 {one}" : $"{number.ToString(CultureInfo.InvariantCulture)} {many}";

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
        _ when names.Count <= most => string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1],
        _ => string.Join(", ", names.Take(most)) + $" and {names.Count - most} more",
    };
}
