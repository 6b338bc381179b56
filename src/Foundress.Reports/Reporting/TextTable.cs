using System.Text;

namespace Foundress.Reports.Reporting;

/// <summary>Rows of text in aligned columns; a head that begins with ">" makes a right-aligned column.</summary>
internal sealed class TextTable
{
    private const int LeastWidth = 10;

    private readonly string[] _heads;
    private readonly bool[] _right;
    private readonly List<string[]> _rows = [];

    /// <summary>A table with these heads.</summary>
    public TextTable(params ReadOnlySpan<string> heads)
    {
        _heads = heads.ToArray();
        _right = new bool[heads.Length];
        for (var i = 0; i < _heads.Length; i++)
        {
            _right[i] = _heads[i].StartsWith('>');
            _heads[i] = _heads[i].TrimStart('>');
        }
    }

    /// <summary>Whether there is no row.</summary>
    public bool IsEmpty => _rows.Count == 0;

    /// <summary>Adds a row with a cell for each head.</summary>
    public void Add(params ReadOnlySpan<string> cells) => _rows.Add(cells.ToArray());

    /// <summary>Writes heads, a rule and the rows; text columns are narrowed and their cells wrapped to keep to a width.</summary>
    public void Write(StringBuilder text, int most)
    {
        var widths = Widths(most);
        WriteRow(text, _heads, widths);
        WriteRow(text, Array.ConvertAll(widths, static width => new string('-', width)), widths);
        foreach (var row in _rows)
            WriteRow(text, row, widths);
    }

    private int[] Widths(int most)
    {
        var widths = new int[_heads.Length];
        for (var i = 0; i < widths.Length; i++)
        {
            widths[i] = _heads[i].Length;
            foreach (var row in _rows)
                widths[i] = Math.Max(widths[i], row[i].Length);
        }

        for (var total = widths.Sum() + 2 * (widths.Length - 1); total > most; total--)
        {
            var widest = -1;
            for (var i = 0; i < widths.Length; i++)
            {
                if (!_right[i] && widths[i] > LeastWidth && (widest < 0 || widths[i] > widths[widest]))
                    widest = i;
            }

            if (widest < 0)
                break;
            widths[widest]--;
        }

        return widths;
    }

    private void WriteRow(StringBuilder text, string[] cells, int[] widths)
    {
        var rests = cells.ToArray();
        bool more;
        do
        {
            more = false;
            var line = new StringBuilder();
            for (var i = 0; i < rests.Length; i++)
            {
                var (part, rest) = Cut(rests[i], widths[i]);
                rests[i] = rest;
                more |= rest.Length > 0;
                line.Append(i > 0 ? "  " : "").Append(_right[i] ? part.PadLeft(widths[i]) : part.PadRight(widths[i]));
            }

            text.Append(line.ToString().TrimEnd()).Append('\n');
        }
        while (more);
    }

    // At a space where there is one, otherwise within the word.
    private static (string Part, string After) Cut(string cell, int width)
    {
        if (cell.Length <= width)
            return (cell, "");
        var at = cell.LastIndexOf(' ', width, width + 1);
        return at > 0 ? (cell[..at], cell[(at + 1)..].TrimStart()) : (cell[..width], cell[width..]);
    }
}
