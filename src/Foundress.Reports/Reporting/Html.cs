using System.Text;
using Foundress.Reports.Drawing;

namespace Foundress.Reports.Reporting;

/// <summary>Writes HTML as text; everything but <see cref="Raw"/> is escaped.</summary>
internal sealed class Html
{
    private const int LongestWhole = 12;

    private readonly StringBuilder _text = new(16384);
    private char[] _kinds = [];

    /// <summary>Writes markup as it is.</summary>
    public Html Raw(string markup)
    {
        _text.Append(markup);
        return this;
    }

    /// <summary>Writes text.</summary>
    public Html Text(string text)
    {
        Markup.Escape(_text, text);
        return this;
    }

    /// <summary>An element with text in it.</summary>
    public Html Element(string name, string text, string? kind = null)
    {
        _text.Append('<').Append(name);
        if (kind is not null)
            _text.Append(" class=\"").Append(kind).Append('"');
        _text.Append('>');
        Markup.Escape(_text, text);
        _text.Append("</").Append(name).Append(">\n");
        return this;
    }

    /// <summary>Opens a table; a head that begins with "#" makes a column of numbers, with "@" of days that do not break.</summary>
    public Html Table(string caption, params ReadOnlySpan<string> heads)
    {
        // The wrapper lets a wide table scroll on a phone without the page moving.
        _text.Append("<div class=\"table\">\n<table>\n");
        Element("caption", caption);
        _text.Append("<thead>\n<tr>");
        _kinds = new char[heads.Length];
        for (var i = 0; i < heads.Length; i++)
        {
            _kinds[i] = heads[i].Length > 0 ? heads[i][0] : ' ';
            _text.Append(_kinds[i] == '#' ? "<th scope=\"col\" class=\"number\">" : "<th scope=\"col\">");
            Markup.Escape(_text, heads[i].TrimStart('#', '@'));
            _text.Append("</th>");
        }

        _text.Append("</tr>\n</thead>\n<tbody>\n");
        return this;
    }

    /// <summary>A row with a cell for each head.</summary>
    public Html Row(params ReadOnlySpan<string> cells)
    {
        _text.Append("<tr>");
        for (var i = 0; i < cells.Length; i++)
        {
            _text.Append(_kinds[i] == '#' ? "<td class=\"number\">" : "<td>");
            if (_kinds[i] == '@')
                Words(cells[i]);
            else
                Markup.Escape(_text, cells[i]);
            _text.Append("</td>");
        }

        _text.Append("</tr>\n");
        return this;
    }

    /// <summary>Closes the table.</summary>
    public Html EndTable() => Raw("</tbody>\n</table>\n</div>\n");

    /// <summary>Writes text whose days, and short words with a hyphen in them, do not break at the end of a line.</summary>
    public Html Words(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < words.Length; i++)
        {
            if (i > 0)
                _text.Append(' ');
            if (IsDay(words.AsSpan(i)))
            {
                Whole(string.Join(' ', words, i, 3));
                i += 2;
            }
            else if (words[i].Length <= LongestWhole && words[i].Contains('-', StringComparison.Ordinal))
            {
                Whole(words[i]);
            }
            else
            {
                Markup.Escape(_text, words[i]);
            }
        }

        return this;
    }

    // "1 Mar 2027", "1. März 2027", also with a mark after it or before it.
    private static bool IsDay(ReadOnlySpan<string> words) =>
        words.Length >= 3
        && words[0].Trim('(', '.') is { Length: 1 or 2 } day && day.All(char.IsAsciiDigit)
        && words[1].TrimEnd('.') is { Length: >= 3 and <= 9 } month && month.All(char.IsLetter)
        && words[2].Length >= 4 && words[2].AsSpan(0, 4).IndexOfAnyExceptInRange('0', '9') < 0;

    private void Whole(string words)
    {
        _text.Append("<span class=\"day\">");
        Markup.Escape(_text, words);
        _text.Append("</span>");
    }

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();
}
