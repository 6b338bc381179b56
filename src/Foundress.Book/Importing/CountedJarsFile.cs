using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Importing;

/// <summary>
/// Reads a CSV file of jars whose bees were counted, to learn what a scoop holds: column <c>bees</c>, and <c>observer</c> and
/// <c>measure</c> where several people or scoops are in one file.
/// </summary>
public static class CountedJarsFile
{
    /// <summary>Stands for the observer or measure of rows that name none.</summary>
    public const string Unnamed = "";

    private const string Observer = "observer";

    /// <summary>Reads the file. Rows without any text are passed over.</summary>
    /// <param name="csv">The file; the caller disposes of it.</param>
    /// <returns>The counted jars, at least one.</returns>
    /// <exception cref="ImportFormatException">It is no such file, or a row is wrong; the message names the row and the value.</exception>
    public static IReadOnlyList<CountedJar> Read(Stream csv)
    {
        var opening = CsvOpening.Of(csv);
        var columns = opening.Header.Select(JarColumns.Normal).ToList();
        var bees = columns.IndexOf(JarColumns.Bees);
        if (bees < 0)
            throw new ImportFormatException(ImportTexts.FormatScoopColumnMissing(JarColumns.Bees, string.Join(", ", opening.Header), $"{Observer}, {JarColumns.Measure}"));
        var (observer, measure) = (columns.IndexOf(Observer), columns.IndexOf(JarColumns.Measure));
        var reader = opening.Reader;
        var jars = new List<CountedJar>();
        while (reader.Read())
        {
            if (reader.Problem is { } malformed)
                throw new ImportFormatException(ImportTexts.FormatRowWrong(reader.Row, malformed));
            if (reader.Fields.All(string.IsNullOrWhiteSpace))
                continue;
            var text = bees < reader.Fields.Count ? reader.Fields[bees].Trim() : string.Empty;
            if (BeesField.Read(text, BeeBasis.Counted, reader.Separator != ',', out var counted) is { } problem)
                throw new ImportFormatException(ImportTexts.FormatRowBeesWrong(reader.Row, text, problem));
            jars.Add(new CountedJar(Text(observer), Text(measure), (int)counted));
        }

        return jars.Count > 0 ? jars : throw new ImportFormatException(ImportTexts.NoCountedJar);

        string Text(int column) => column >= 0 && column < reader.Fields.Count ? reader.Fields[column].Trim() : Unnamed;
    }
}
