using System.Globalization;
using Foundress.Book.Importing;

namespace Foundress.Book.Forecasting;

/// <summary>Reads a CSV file of known columns a row at a time; the same forms, separators and messages as for a file of jars.</summary>
public sealed class TableFile
{
    private readonly CsvReader _reader;
    private readonly Dictionary<string, int> _at = new(StringComparer.Ordinal);

    private TableFile(CsvOpening opening, TableColumns columns)
    {
        _reader = opening.Reader;
        var unknown = new List<string>();
        for (var i = 0; i < opening.Header.Count; i++)
        {
            var name = JarColumns.Normal(opening.Header[i]);
            if (name.Length == 0)
                continue;
            if (!columns.Required.Contains(name) && !columns.Optional.Contains(name))
                unknown.Add(opening.Header[i]);
            else if (!_at.TryAdd(name, i))
                throw new ImportFormatException(string.Create(CultureInfo.InvariantCulture, $"The column '{name}' is there twice (columns {_at[name] + 1} and {i + 1}): take one out."));
        }

        UnknownColumns = unknown;
        var missing = columns.Required.Where(name => !_at.ContainsKey(name)).ToArray();
        if (missing.Length > 0)
        {
            throw new ImportFormatException(
                $"{(missing.Length == 1 ? "The column" : "The columns")} {string.Join(", ", missing)} {(missing.Length == 1 ? "is" : "are")} missing. "
                + $"Needed in a file of {columns.What}s: {string.Join(", ", columns.Required)}.");
        }
    }

    /// <summary>Columns that are not known and not read.</summary>
    public IReadOnlyList<string> UnknownColumns { get; }

    /// <summary>Opens a file and reads its column names.</summary>
    /// <param name="csv">The file; the caller disposes of it.</param>
    /// <param name="columns">The columns.</param>
    /// <exception cref="ImportFormatException">It is not a CSV file with these columns.</exception>
    public static TableFile Open(Stream csv, TableColumns columns) => new(CsvOpening.Of(csv, columns.Required), columns);

    /// <summary>Reads the rows; rows without any text are passed over. May be called once.</summary>
    public IEnumerable<TableRow> Rows()
    {
        while (_reader.Read())
        {
            if (_reader.Problem is null && _reader.Fields.All(string.IsNullOrWhiteSpace))
                continue;
            var row = new TableRow(_reader.Row, _at, [.. _reader.Fields], _reader.Separator != ',');
            row.Check(string.Empty, _reader.Problem);
            yield return row;
        }
    }
}
