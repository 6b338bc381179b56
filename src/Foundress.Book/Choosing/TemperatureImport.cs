using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Science.Choosing;

namespace Foundress.Book.Choosing;

/// <summary>
/// Reads a forecast from a CSV file with a row a day: <c>day</c> (yyyy-MM-dd), <c>low</c> and <c>high</c> in degrees Celsius.
/// Other columns are passed over; the file's separator is found out. Degrees Fahrenheit are not guessed at.
/// </summary>
public static class TemperatureImport
{
    private const int MostDays = 800;

    private static readonly string[] DayNames = ["day", "date"];
    private static readonly string[] LowNames = ["low", "min", "minimum", "tmin", "lowest"];
    private static readonly string[] HighNames = ["high", "max", "maximum", "tmax", "highest"];

    /// <summary>Reads a file.</summary>
    /// <param name="file">The file; left open.</param>
    /// <exception cref="ImportFormatException">It is no CSV file, a column is missing, or it has too many rows. The message says what to do.</exception>
    public static TemperatureFile Read(Stream file)
    {
        var opening = CsvOpening.Of(file);
        var (day, low, high) = (Column(opening, DayNames), Column(opening, LowNames), Column(opening, HighNames));
        var days = new Dictionary<DateOnly, DayTemperatures>();
        var rejected = new List<(int, FieldProblem)>();
        var reader = opening.Reader;
        while (reader.Read())
        {
            if (reader.Fields.All(string.IsNullOrWhiteSpace))
                continue;
            if (days.Count + rejected.Count >= MostDays)
                throw new ImportFormatException(ChoosingTexts.FormatTooManyRows(MostDays));
            if (Take(reader, day, low, high, days) is { } problem)
                rejected.Add((reader.Row, problem));
        }

        return new(days, rejected);
    }

    private static FieldProblem? Take(CsvReader reader, int day, int low, int high, Dictionary<DateOnly, DayTemperatures> days)
    {
        if (reader.Problem is { } malformed)
            return new(string.Empty, string.Empty, malformed);
        string Field(int column) => column < reader.Fields.Count ? reader.Fields[column].Trim() : string.Empty;
        if (DateField.Read(Field(day), DateOnly.MaxValue, out var on) is { } wrong)
            return new("day", Field(day), wrong);
        if (Degrees(Field(low)) is not { } lowest)
            return new("low", Field(low), ChoosingTexts.WriteDegrees);
        if (Degrees(Field(high)) is not { } highest)
            return new("high", Field(high), ChoosingTexts.WriteDegrees);
        if (lowest > highest)
            return new("low", Field(low), ChoosingTexts.LowAboveHigh);
        return days.TryAdd(on, new(lowest, highest)) ? null : new("day", Field(day), ChoosingTexts.DayTwice);
    }

    private static double? Degrees(string text) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value is >= -60 and <= 60 ? value : null;

    private static int Column(CsvOpening opening, string[] names)
    {
        for (var i = 0; i < opening.Header.Count; i++)
        {
            if (names.Contains(opening.Header[i], StringComparer.OrdinalIgnoreCase))
                return i;
        }

        throw new ImportFormatException(ChoosingTexts.FormatColumnMissing(names[0], string.Join(", ", opening.Header)));
    }
}
