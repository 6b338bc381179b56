using Foundress.Book.Judging;
using Foundress.Science.Judging;

namespace Foundress.Reports.Drawing;

/// <summary>The marks' shapes. Shape and filling tell the standing without colour: open, half filled, filled and pointed.</summary>
public static class Symbols
{
    /// <summary>The class that gives a standing its colour.</summary>
    public static string ClassOf(Standing? standing) => standing switch
    {
        Standing.Below => "fd-below",
        Standing.Unclear => "fd-unclear",
        Standing.Above => "fd-above",
        _ => "fd-other",
    };

    /// <summary>Draws a jar's mark; a jar on another scale than the line is a cross.</summary>
    internal static void Jar(Svg svg, Standing? standing, double x, double y, double r)
    {
        switch (standing)
        {
            case Standing.Below:
                svg.Circle("fd-open", x, y, r);
                break;
            case Standing.Unclear:
                svg.Circle("fd-open", x, y, r);
                svg.Path("fd-solid", new PathText().Move(x, y - r).Arc(r, false, x, y + r).Close());
                break;
            case Standing.Above:
                var d = r * 1.25;
                svg.Path("fd-solid", new PathText().Move(x, y - d).Line(x + d, y).Line(x, y + d).Line(x - d, y).Close());
                break;
            default:
                svg.Path("fd-stroke", new PathText().Move(x - r, y - r).Line(x + r, y + r).Move(x - r, y + r).Line(x + r, y - r));
                break;
        }
    }

    /// <summary>Draws the mark of a count on another scale: a triangle on its tip for a fall, a cell's hexagon for opened brood; open, half filled or filled by its standing.</summary>
    internal static void Other(Svg svg, OtherKind kind, Standing? standing, double x, double y, double r)
    {
        var (outline, half) = kind == OtherKind.NaturalFall
            ? (new PathText().Move(x - r, y - (r * 0.8)).Line(x + r, y - (r * 0.8)).Line(x, y + r).Close(),
                new PathText().Move(x - r, y - (r * 0.8)).Line(x, y - (r * 0.8)).Line(x, y + r).Close())
            : (new PathText().Move(x - (r / 2), y - (r * 0.87)).Line(x + (r / 2), y - (r * 0.87)).Line(x + r, y).Line(x + (r / 2), y + (r * 0.87)).Line(x - (r / 2), y + (r * 0.87)).Line(x - r, y).Close(),
                new PathText().Move(x, y - (r * 0.87)).Line(x - (r / 2), y - (r * 0.87)).Line(x - r, y).Line(x - (r / 2), y + (r * 0.87)).Line(x, y + (r * 0.87)).Close());
        svg.Path(standing == Standing.Above ? "fd-solid" : "fd-open", outline);
        if (standing == Standing.Unclear)
            svg.Path("fd-solid", half);
    }

    /// <summary>Draws a due mark: an open square, with a tick when done, filled with an exclamation mark when overdue.</summary>
    internal static void Due(Svg svg, bool done, bool overdue, double x, double y, double r)
    {
        svg.Rect(overdue && !done ? "fd-solid" : "fd-open", x - r, y - r, 2 * r, 2 * r);
        if (done)
        {
            svg.Path("fd-stroke", new PathText().Move(x - r * 0.6, y).Line(x - r * 0.1, y + r * 0.55).Line(x + r * 0.65, y - r * 0.55));
        }
        else if (overdue)
        {
            svg.Path("fd-cut", new PathText().Move(x, y - r * 0.65).Line(x, y + r * 0.15).Move(x, y + r * 0.5).Line(x, y + r * 0.7));
        }
    }
}
