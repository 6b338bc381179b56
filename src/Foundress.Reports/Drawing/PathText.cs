using System.Text;

namespace Foundress.Reports.Drawing;

/// <summary>Builds the data of an SVG path from moves and lines.</summary>
internal sealed class PathText
{
    private readonly StringBuilder _text = new();

    /// <summary>Whether nothing has been drawn.</summary>
    public bool IsEmpty => _text.Length == 0;

    /// <summary>Moves the pen without drawing.</summary>
    public PathText Move(double x, double y) => Add('M', x, y);

    /// <summary>Draws a straight line.</summary>
    public PathText Line(double x, double y) => Add('L', x, y);

    /// <summary>Draws an arc of a circle.</summary>
    /// <param name="radius">The circle's radius.</param>
    /// <param name="clockwise">Which way round.</param>
    /// <param name="x">Where it ends.</param>
    /// <param name="y">Where it ends.</param>
    public PathText Arc(double radius, bool clockwise, double x, double y)
    {
        _text.Append('A').Append(Svg.Number(radius)).Append(' ').Append(Svg.Number(radius)).Append(" 0 0 ").Append(clockwise ? '1' : '0').Append(' ');
        return Append(x, y);
    }

    /// <summary>Closes the figure.</summary>
    public PathText Close()
    {
        _text.Append('Z');
        return this;
    }

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();

    private PathText Add(char command, double x, double y)
    {
        _text.Append(command);
        return Append(x, y);
    }

    private PathText Append(double x, double y)
    {
        _text.Append(Svg.Number(x)).Append(' ').Append(Svg.Number(y));
        return this;
    }
}
