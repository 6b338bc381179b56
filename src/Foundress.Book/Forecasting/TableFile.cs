using Foundress.Book.Importing;

namespace Foundress.Book.Forecasting;

/// <summary>Reads a CSV file of known columns a row at a time; the same forms, separators and messages as for a file of jars.</summary>
public sealed class TableFile
{
    private readonly CsvReader _reader;
    private readonly ColumnPlaces _columns;

    private TableFile(CsvOpening opening, TableColumns columns)
    {
        _reader = opening.Reader;
        _columns = new ColumnPlaces(
            opening.Header, columns.Required, columns.Optional, columns.Needed, passedOver: []);
    }

    /// <summary>Columns that are not known and not read.</summary>
    public IReadOnlyList<string> UnknownColumns => _columns.Unknown;

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
            var row = new TableRow(_reader.Row, _columns, [.. _reader.Fields], _reader.Separator != ',');
            row.Check(string.Empty, _reader.Problem);
            yield return row;
        }
    }
}
