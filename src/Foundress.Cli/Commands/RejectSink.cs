using System.Text;
using Foundress.Book.Importing;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary>Names rejected rows on the error output and keeps them in a reject file, which is made when the first one comes.</summary>
internal sealed class RejectSink : IDisposable
{
    // A file of another kind can have a hundred thousand bad rows; the reject file has them all.
    private const int GreatestShown = 20;

    private readonly string _source;
    private readonly string? _wanted;
    private readonly IReadOnlyList<string> _columns;
    private readonly char _separator;
    private readonly TextWriter _error;
    private readonly bool _write;
    private StreamWriter? _text;
    private RejectFile? _file;
    private int _shown;

    internal RejectSink(string source, string? wanted, IReadOnlyList<string> columns, char separator, TextWriter error, bool write)
    {
        (_source, _wanted, _columns, _separator, _error, _write) = (source, wanted, columns, separator, error, write);
        if (wanted is not null && System.IO.Path.GetFullPath(wanted) == System.IO.Path.GetFullPath(source))
            throw new UsageException(FileCommandTexts.FormatRejectsIsSource(wanted));
    }

    /// <summary>The reject file; null while there is none.</summary>
    internal string? Path { get; private set; }

    internal void Take(RejectedRow row)
    {
        if (_shown++ < GreatestShown)
        {
            foreach (var problem in row.Problems)
                _error.WriteLine(row.Line == row.Row ? SharedTexts.FormatRowProblem(_source, row.Row, problem) : FileCommandTexts.FormatRowProblemOnLine(_source, row.Row, row.Line, problem));
        }
        else if (_shown == GreatestShown + 1)
        {
            _error.WriteLine(FileCommandTexts.FormatMoreRejected(_source));
        }

        if (!_write)
            return;
        if (_file is null)
        {
            Path = _wanted ?? FreeName();
            _text = new StreamWriter(Path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
            _file = new RejectFile(_text, _columns, _separator);
        }

        _file.Write(row);
    }

    public void Dispose() => _text?.Dispose();

    // An older reject file may hold somebody's corrections.
    private string FreeName()
    {
        var folder = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(_source))!;
        var name = System.IO.Path.GetFileNameWithoutExtension(_source);
        var path = System.IO.Path.Combine(folder, name + ".rejected.csv");
        for (var number = 2; File.Exists(path); number++)
            path = System.IO.Path.Combine(folder, $"{name}.rejected-{number}.csv");
        return path;
    }
}
