using System.Buffers;

namespace Foundress.Book.Importing;

/// <summary>
/// Reads separated values (RFC 4180) a row at a time, in memory that does not grow with the file. A row that breaks the
/// rules of quoting is handed out as such and costs only itself: reading goes on with the next line of the file.
/// </summary>
/// <remarks>
/// Taken as ends of a row: CR LF, LF and CR. A quote inside a field that does not start with one is an ordinary character.
/// Spaces around a quoted field are passed over. Why no library does this: <c>docs/decisions/0020-csv-library.md</c>.
/// Not safe for concurrent use.
/// </remarks>
public sealed class CsvReader
{
    /// <summary>No row may be longer than this many characters; an unclosed quote is looked for no further.</summary>
    public const int GreatestRow = 65_536;

    private const int LookAhead = GreatestRow + 2;

    private readonly TextReader _text;
    private readonly SearchValues<char> _fieldEnds;
    private readonly char[] _buffer = new char[4 * LookAhead];
    private readonly List<string> _fields = [];
    private int _start;
    private int _end;
    private bool _ended;
    private int _nextLine = 1;

    /// <summary>A reader at the start of a text.</summary>
    /// <param name="text">The text; the caller disposes of it.</param>
    /// <param name="separator">What stands between fields: usually a comma, a semicolon or a tab.</param>
    public CsvReader(TextReader text, char separator)
    {
        _text = text;
        Separator = separator;
        _fieldEnds = SearchValues.Create([separator, '\r', '\n']);
    }

    /// <summary>What stands between fields.</summary>
    public char Separator { get; }

    /// <summary>The number of the row last read, as a spreadsheet shows it: the first is 1, and empty rows count.</summary>
    public int Row { get; private set; }

    /// <summary>The line of the file the row starts on, as a text editor shows it. Differs from <see cref="Row"/> after a line break within quotes.</summary>
    public int Line { get; private set; }

    /// <summary>The row's fields without their quotes. Valid until the next <see cref="Read"/>.</summary>
    public IReadOnlyList<string> Fields => _fields;

    /// <summary>What is wrong with the row's form, with the fix; null when nothing is. <see cref="Fields"/> is then a plain split of its first line.</summary>
    public string? Problem { get; private set; }

    /// <summary>Reads the next row.</summary>
    /// <returns>False at the end of the text.</returns>
    public bool Read()
    {
        Fill();
        _fields.Clear();
        Problem = null;
        if (_start == _end)
            return false;
        Row++;
        Line = _nextLine;
        var length = Split(_buffer.AsSpan(_start, _end - _start));
        if (length < 0)
        {
            TakeLineAsItIs();
            return true;
        }

        _nextLine += CountLineEnds(_buffer.AsSpan(_start, length));
        _start += length;
        return true;
    }

    // Keeps at least one greatest row and its line end in the buffer, so that a row can always be taken up again from its start.
    private void Fill()
    {
        if (_ended || _end - _start >= LookAhead)
            return;
        Array.Copy(_buffer, _start, _buffer, 0, _end - _start);
        _end -= _start;
        _start = 0;
        while (_end < _buffer.Length)
        {
            var read = _text.Read(_buffer, _end, _buffer.Length - _end);
            if (read == 0)
            {
                _ended = true;
                return;
            }

            _end += read;
        }
    }

    /// <returns>How many characters the row takes with its line end; -1 when it is malformed.</returns>
    private int Split(ReadOnlySpan<char> text)
    {
        var limited = text[..Math.Min(text.Length, GreatestRow + 1)];
        var at = 0;
        while (true)
        {
            var quote = at;
            while (quote < limited.Length && limited[quote] == ' ' && Separator != ' ')
                quote++;
            if (quote < limited.Length && limited[quote] == '"')
            {
                at = TakeQuoted(limited, quote + 1);
                if (at < 0)
                    return -1;
            }
            else
            {
                var length = limited[at..].IndexOfAny(_fieldEnds);
                if (length < 0)
                    length = limited.Length - at;
                _fields.Add(limited.Slice(at, length).ToString());
                at += length;
            }

            if (at == limited.Length)
            {
                if (limited.Length == text.Length)
                    return at;
                Problem = ImportTexts.FormatRowTooLong(GreatestRow);
                return -1;
            }

            if (limited[at] != Separator)
                return at + LineEndAt(text, at);
            at++;
        }
    }

    /// <returns>Where the text goes on behind the closing quote and spaces; -1 when the quote is malformed.</returns>
    private int TakeQuoted(ReadOnlySpan<char> text, int from)
    {
        var at = from;
        var doubled = false;
        while (true)
        {
            var found = text[at..].IndexOf('"');
            if (found < 0)
            {
                Problem = ImportTexts.QuoteNeverClosed;
                return -1;
            }

            at += found;
            if (at + 1 >= text.Length || text[at + 1] != '"')
                break;
            doubled = true;
            at += 2;
        }

        var value = text[from..at].ToString();
        at++;
        while (at < text.Length && text[at] == ' ' && Separator != ' ')
            at++;
        if (at < text.Length && !_fieldEnds.Contains(text[at]))
        {
            Problem = ImportTexts.TextAfterQuote;
            return -1;
        }

        _fields.Add(doubled ? value.Replace("\"\"", "\"", StringComparison.Ordinal) : value);
        return at;
    }

    private void TakeLineAsItIs()
    {
        _fields.Clear();
        var text = _buffer.AsSpan(_start, _end - _start);
        var length = text.IndexOfAny('\r', '\n');
        _fields.AddRange(text[..Math.Min(length < 0 ? text.Length : length, GreatestRow)].ToString().Split(Separator));
        while (length < 0)
        {
            _start = _end;
            Fill();
            if (_start == _end)
                return;
            text = _buffer.AsSpan(_start, _end - _start);
            length = text.IndexOfAny('\r', '\n');
        }

        // A line end may be cut in two by the end of the buffer.
        _start += length;
        Fill();
        _start += LineEndAt(_buffer.AsSpan(_start, _end - _start), 0);
        _nextLine++;
    }

    private static int LineEndAt(ReadOnlySpan<char> text, int at) => text[at] == '\r' && at + 1 < text.Length && text[at + 1] == '\n' ? 2 : 1;

    private static int CountLineEnds(ReadOnlySpan<char> text)
    {
        var count = 0;
        for (var at = text.IndexOfAny('\r', '\n'); at >= 0;)
        {
            count++;
            text = text[(at + LineEndAt(text, at))..];
            at = text.IndexOfAny('\r', '\n');
        }

        return count;
    }
}
