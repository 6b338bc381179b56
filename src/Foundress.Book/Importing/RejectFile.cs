using System.Globalization;

namespace Foundress.Book.Importing;

/// <summary>
/// Writes rejected rows in the columns they came in, with <c>row</c> and <c>problem</c> behind them, so that they can be
/// put right and imported again as they are.
/// </summary>
public sealed class RejectFile
{
    private readonly CsvWriter _writer;
    private readonly int _columns;
    private readonly bool[] _kept;

    /// <summary>Starts a reject file and writes its column names.</summary>
    /// <param name="text">Where to; the caller disposes of it.</param>
    /// <param name="import">The import the rows come from.</param>
    public RejectFile(TextWriter text, JarImport import)
        : this(text, import.Columns, import.Separator)
    {
    }

    /// <summary>Starts a reject file and writes its column names.</summary>
    /// <param name="text">Where to; the caller disposes of it.</param>
    /// <param name="columns">The columns of the file the rows come from.</param>
    /// <param name="separator">Its separator.</param>
    public RejectFile(TextWriter text, IReadOnlyList<string> columns, char separator)
    {
        _writer = new CsvWriter(text, separator);
        _columns = columns.Count;
        // The file may itself be a reject file: its old verdicts are replaced.
        _kept = [.. columns.Select(name => JarColumns.Normal(name) is not (JarColumns.Row or JarColumns.Problem))];
        _writer.Write([.. columns.Where((_, i) => _kept[i]), JarColumns.Row, JarColumns.Problem]);
    }

    /// <summary>Writes one row. Fields beyond the header's are named with the problem: in columns of their own they would shift its.</summary>
    public void Write(RejectedRow row)
    {
        var fields = new List<string>(_columns + 2);
        for (var i = 0; i < _columns; i++)
        {
            if (_kept[i])
                fields.Add(i < row.Fields.Count ? row.Fields[i] : string.Empty);
        }

        var problem = string.Join(" ", row.Problems);
        if (row.Fields.Count > _columns)
            problem = ImportTexts.FormatRestOfRow(problem, string.Join(" | ", row.Fields.Skip(_columns)));
        _writer.Write([.. fields, row.Row.ToString(CultureInfo.InvariantCulture), problem]);
    }
}
