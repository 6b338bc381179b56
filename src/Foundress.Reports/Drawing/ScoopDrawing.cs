using System.Globalization;

namespace Foundress.Reports.Drawing;

/// <summary>Draws counted jars on a line of bees, with the usual jar and where the next uncounted jar lies.</summary>
public static class ScoopDrawing
{
    private const double DotsTop = 26;
    private const double DotsBottom = 68;
    private const double BarMiddle = 84;
    private const double AxisTop = 100;
    private const double Height = 138;
    private const double Dot = 4;

    /// <summary>Draws a scoop as an SVG element.</summary>
    /// <param name="scoop">What to draw.</param>
    /// <param name="id">The element's id, unique on its page.</param>
    /// <param name="shape">Narrow is 360 units wide, wide 640.</param>
    /// <param name="culture">Whose numbers to write.</param>
    /// <exception cref="ArgumentException">The id is not a plain name, or a value cannot be drawn; the message names it.</exception>
    public static string Draw(ScoopPicture scoop, string id, DrawingShape shape, CultureInfo culture)
    {
        Require(scoop);
        var width = shape == DrawingShape.Narrow ? 360d : 640d;
        const double font = 13;
        var (left, right) = (14d, width - 14);
        var (low, high) = Ends(scoop);
        double X(double bees) => left + ((right - left) * (bees - low) / (high - low));

        var svg = Svg.Picture(id, "fd-scoop", width, Height, scoop.Title, scoop.Sentence);
        var step = Step(high - low);
        for (var bees = Math.Ceiling(low / step) * step; bees <= high; bees += step)
        {
            svg.Line("fd-tick", X(bees), AxisTop, X(bees), AxisTop + 4);
            svg.Text("fd-quiet", X(bees), AxisTop + 18, font, "middle", bees.ToString("0", culture));
        }

        svg.Line("fd-base", left, AxisTop, right, AxisTop);
        svg.Text("fd-quiet", right, AxisTop + 34, font, "end", DrawingTexts.BeesInTheJar);
        svg.Line("fd-watch", X(scoop.Said), 20, X(scoop.Said), AxisTop);
        var said = DrawingTexts.FormatSaid(scoop.Said.ToString("0", culture));
        var half = TextWidth.Of(said, font) / 2;
        svg.Text("fd-ink fd-halo", Math.Clamp(X(scoop.Said), left + half, right - half), font + 1, font, "middle", said);

        svg.Group("fd-jar fd-below");
        svg.Line("fd-interval", X(scoop.Lower), BarMiddle, X(scoop.Upper), BarMiddle);
        svg.Line("fd-whisker", X(scoop.Lower), BarMiddle - 6, X(scoop.Lower), BarMiddle + 6);
        svg.Line("fd-whisker", X(scoop.Upper), BarMiddle - 6, X(scoop.Upper), BarMiddle + 6);
        svg.Path("fd-solid", new PathText().Move(X(scoop.Usual), BarMiddle - 7).Line(X(scoop.Usual) + 6, BarMiddle).Line(X(scoop.Usual), BarMiddle + 7).Line(X(scoop.Usual) - 6, BarMiddle).Close());
        svg.End();
        DrawDots(svg, scoop, X);
        return svg.Finish();
    }

    // Jars of nearly the same number are piled up; high piles are pressed together so that they fit.
    private static void DrawDots(Svg svg, ScoopPicture scoop, Func<double, double> x)
    {
        var sorted = scoop.Counted.Order().ToArray();
        var piles = sorted.GroupBy(bees => (int)Math.Floor(x(bees) / (2 * Dot))).ToDictionary(pile => pile.Key, pile => pile.Count());
        var apart = piles.Count == 0 ? 0 : Math.Min(2 * Dot, (DotsBottom - DotsTop) / Math.Max(1, piles.Values.Max() - 1));
        var piled = new Dictionary<int, int>();
        svg.Group("fd-jar fd-other");
        foreach (var bees in sorted)
        {
            var slot = (int)Math.Floor(x(bees) / (2 * Dot));
            var below = piled.GetValueOrDefault(slot);
            piled[slot] = below + 1;
            svg.Circle("fd-open", x(bees), DotsBottom - (below * apart), Dot);
        }

        svg.End();
    }

    private static (double Low, double High) Ends(ScoopPicture scoop)
    {
        var low = Math.Min(scoop.Lower, scoop.Said);
        var high = Math.Max(scoop.Upper, scoop.Said);
        foreach (var bees in scoop.Counted)
            (low, high) = (Math.Min(low, bees), Math.Max(high, bees));
        var room = Math.Max(10, 0.06 * (high - low));
        return (Math.Max(0, low - room), high + room);
    }

    private static double Step(double span)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(span)));
        return (span / step) switch
        {
            < 2 => step / 2,
            < 5 => step,
            _ => 2 * step,
        };
    }

    private static void Require(ScoopPicture scoop)
    {
        foreach (var bees in (ReadOnlySpan<double>)[scoop.Said, scoop.Usual, scoop.Lower, scoop.Upper])
        {
            if (!double.IsFinite(bees) || bees <= 0)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A scoop of {bees} bees cannot be drawn: numbers of bees are finite and above 0."), nameof(scoop));
        }

        foreach (var bees in scoop.Counted)
        {
            if (bees < 1)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A counted jar of {bees} bees cannot be drawn: it holds at least one."), nameof(scoop));
        }

        if (scoop.Lower > scoop.Upper)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The interval {scoop.Lower} to {scoop.Upper} is turned round."), nameof(scoop));
    }
}
