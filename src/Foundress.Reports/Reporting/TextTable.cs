using System.Text;

namespace Foundress.Reports.Reporting;

/// <summary>Rows of text in aligned columns; a head that begins with ">" makes a right-aligned column.</summary>
internal sealed class TextTable
{
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

    /// <summary>Writes heads, a rule and the rows.</summary>
    public void Write(StringBuilder text)
    {
        var widths = new int[_heads.Length];
        for (var i = 0; i < widths.Length; i++)
        {
            widths[i] = _heads[i].Length;
            foreach (var row in _rows)
                widths[i] = Math.Max(widths[i], row[i].Length);
        }

        WriteRow(text, _heads, widths);
        WriteRow(text, Array.ConvertAll(widths, static width => new string('-', width)), widths);
        foreach (var row in _rows)
            WriteRow(text, row, widths);
    }

    private void WriteRow(StringBuilder text, string[] cells, int[] widths)
    {
        var line = new StringBuilder();
        for (var i = 0; i < cells.Length; i++)
        {
            if (i > 0)
                line.Append("  ");
            line.Append(_right[i] ? cells[i].PadLeft(widths[i]) : cells[i].PadRight(widths[i]));
        }

        text.Append(line.ToString().TrimEnd()).Append('\n');
    }
}
