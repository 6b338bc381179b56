using System.Globalization;
using System.Text;

namespace Foundress.Reports.Drawing;

/// <summary>
/// Writes SVG as text: always well formed, invariant numbers rounded to a tenth, everything escaped. Colours come from
/// classes only, so that a page may forbid inline styles.
/// </summary>
internal sealed class Svg
{
    private readonly StringBuilder _text = new(4096);
    private readonly Stack<string> _open = new();
    private bool _inTag;

    /// <summary>Starts a picture that reads as one image with a title and a description.</summary>
    /// <exception cref="ArgumentException">The id is not a plain XML name.</exception>
    public static Svg Picture(string id, string kind, double width, double height, string title, string description)
    {
        RequireId(id);
        return new Svg()
            .Start("svg").Has("xmlns", "http://www.w3.org/2000/svg").Has("id", id).Has("class", "fd-picture " + kind)
            .Has("viewBox", $"0 0 {Number(width)} {Number(height)}").Has("role", "img")
            .Has("aria-labelledby", id + "-title").Has("aria-describedby", id + "-desc")
            .Start("title").Has("id", id + "-title").Says(title).End()
            .Start("desc").Has("id", id + "-desc").Says(description).End();
    }

    /// <summary>A number as SVG reads it: invariant, at most one decimal.</summary>
    public static string Number(double value) => double.IsFinite(value)
        ? (Math.Round(value, 1) + 0d).ToString("0.#", CultureInfo.InvariantCulture)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "A picture's coordinate must be finite.");

    /// <summary>Opens an element.</summary>
    public Svg Start(string name)
    {
        CloseTag();
        _text.Append('<').Append(name);
        _open.Push(name);
        _inTag = true;
        return this;
    }

    /// <summary>Gives the element just opened an attribute.</summary>
    public Svg Has(string name, string value)
    {
        _text.Append(' ').Append(name).Append("=\"");
        Markup.Escape(_text, value);
        _text.Append('"');
        return this;
    }

    /// <inheritdoc cref="Has(string, string)"/>
    public Svg Has(string name, double value) => Has(name, Number(value));

    /// <summary>Writes text into the element.</summary>
    public Svg Says(string text)
    {
        CloseTag();
        Markup.Escape(_text, text);
        return this;
    }

    /// <summary>Closes the element opened last.</summary>
    public Svg End()
    {
        var name = _open.Pop();
        if (_inTag)
            _text.Append("/>");
        else
            _text.Append("</").Append(name).Append('>');
        _inTag = false;
        if (_open.Count <= 1)
            _text.Append('\n');
        return this;
    }

    /// <summary>Opens a group.</summary>
    public Svg Group(string kind) => Start("g").Has("class", kind);

    /// <summary>A straight line.</summary>
    public Svg Line(string kind, double x1, double y1, double x2, double y2) =>
        Start("line").Has("class", kind).Has("x1", x1).Has("y1", y1).Has("x2", x2).Has("y2", y2).End();

    /// <summary>A rectangle.</summary>
    public Svg Rect(string kind, double x, double y, double width, double height, double round = 0)
    {
        Start("rect").Has("class", kind).Has("x", x).Has("y", y).Has("width", Math.Max(0, width)).Has("height", Math.Max(0, height));
        if (round > 0)
            Has("rx", round);
        return End();
    }

    /// <summary>A circle.</summary>
    public Svg Circle(string kind, double x, double y, double radius) =>
        Start("circle").Has("class", kind).Has("cx", x).Has("cy", y).Has("r", radius).End();

    /// <summary>A path.</summary>
    public Svg Path(string kind, PathText path) => Start("path").Has("class", kind).Has("d", path.ToString()).End();

    /// <summary>A line of text; the anchor is start, middle or end.</summary>
    public Svg Text(string kind, double x, double y, double size, string anchor, string text)
    {
        Start("text").Has("class", kind).Has("x", x).Has("y", y).Has("font-size", size);
        if (anchor != "start")
            Has("text-anchor", anchor);
        return Says(text).End();
    }

    /// <summary>What a pointer resting on the group shows.</summary>
    public Svg Title(string text) => Start("title").Says(text).End();

    /// <summary>Closes everything and gives the picture.</summary>
    public string Finish()
    {
        while (_open.Count > 0)
            End();
        return _text.ToString();
    }

    private static void RequireId(string id)
    {
        var good = id.Length > 0 && char.IsAsciiLetter(id[0]);
        foreach (var letter in id)
            good &= char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_';
        if (!good)
            throw new ArgumentException($"A picture's id must start with a letter and hold only letters, digits, '-' and '_', but is '{id}'.", nameof(id));
    }

    private void CloseTag()
    {
        if (_inTag)
            _text.Append('>');
        _inTag = false;
    }
}
