using System.Globalization;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>
/// Draws one jar's answer: the curve of levels that fit the count, the interval below it, the lines, and the part of the
/// curve above the act line hatched with its chance.
/// </summary>
public static class JarDrawing
{
    private const double PlotTop = 26;
    private const double PlotBottom = 112;
    private const double BarMiddle = 128;
    private const double AxisTop = 144;
    private const double Height = 182;

    /// <summary>Draws a jar as an SVG element.</summary>
    /// <param name="jar">What to draw.</param>
    /// <param name="id">The element's id, unique on its page.</param>
    /// <param name="shape">Narrow is 360 units wide, wide 640.</param>
    /// <param name="culture">Whose numbers to write.</param>
    /// <exception cref="ArgumentException">The id is not a plain name, or a value cannot be drawn; the message names it.</exception>
    public static string Draw(JarPicture jar, string id, DrawingShape shape, CultureInfo culture)
    {
        Require(jar);
        var width = shape == DrawingShape.Narrow ? 360d : 640d;
        const double font = 13;
        var left = 12d;
        var right = width - 12;
        var top = Axis(jar);
        double X(double level) => left + (right - left) * Math.Min(level, top) / top;

        var svg = Svg.Picture(id, "fd-jar-picture", width, Height, jar.Title, jar.Sentence);
        svg.Start("defs").Start("pattern").Has("id", id + "-hatch").Has("width", 6).Has("height", 6).Has("patternUnits", "userSpaceOnUse")
            .Path("fd-hatch", new PathText().Move(0, 6).Line(6, 0).Move(-1, 1).Line(1, -1).Move(5, 7).Line(7, 5)).End().End();

        var step = Step(top);
        for (var i = 0; i * step <= top * 1.0001; i++)
        {
            var x = X(i * step);
            svg.Line("fd-tick", x, AxisTop, x, AxisTop + 4);
            if (x + 10 < right)
                svg.Text("fd-quiet", x, AxisTop + 17, font, i == 0 ? "start" : "middle", LevelText.Line(i * step, culture));
        }

        svg.Text("fd-quiet", right, AxisTop + 33, font, "end", DrawingTexts.MitesPer100);
        svg.Line("fd-base", left, AxisTop, right, AxisTop);
        DrawCurve(svg, jar, id, X);
        if (jar.Watch is { } watch && watch < top)
            svg.Line("fd-watch", X(watch), PlotTop, X(watch), AxisTop);
        if (jar.Act is { } act)
            DrawAct(svg, jar, X(act), act, left, right, font, culture);

        svg.Group("fd-jar " + Symbols.ClassOf(jar.Standing));
        svg.Line("fd-interval", X(jar.Lower), BarMiddle, X(jar.Upper), BarMiddle);
        svg.Line("fd-whisker", X(jar.Lower), BarMiddle - 6, X(jar.Lower), BarMiddle + 6);
        svg.Line("fd-whisker", X(jar.Upper), BarMiddle - 6, X(jar.Upper), BarMiddle + 6);
        Symbols.Jar(svg, jar.Standing, X(jar.Level), BarMiddle, 6);
        svg.End();
        return svg.Finish();
    }

    private static void DrawAct(Svg svg, JarPicture jar, double x, double act, double left, double right, double font, CultureInfo culture)
    {
        svg.Line("fd-act", x, PlotTop - 4, x, AxisTop);
        var text = jar.ChanceOverAct is { } over
            ? DrawingTexts.FormatChanceAbove(LevelText.Chance(over, culture), LevelText.Line(act, culture))
            : DrawingTexts.FormatAct(LevelText.Line(act, culture));
        var width = TextWidth.Of(text, font) * 1.08;
        if (x + width <= right)
            svg.Text("fd-ink fd-strong", x, font + 2, font, "start", text);
        else
            svg.Text("fd-ink fd-strong", Math.Max(left, right - width), font + 2, font, "start", text);
    }

    private static void DrawCurve(Svg svg, JarPicture jar, string id, Func<double, double> x)
    {
        if (jar.Density.Count < 2)
            return;
        var highest = 0d;
        // The curve of a jar without mites rises without end at 0: what matters is its shape further up.
        foreach (var point in jar.Density)
            highest = point.Level >= jar.Upper / 15 ? Math.Max(highest, point.Height) : highest;
        if (highest <= 0)
            return;
        double Y(double height) => PlotBottom - (PlotBottom - PlotTop) * Math.Min(1, height / highest);

        svg.Path("fd-curve", Area(jar.Density, 0, x, Y));
        if (jar.Act is { } act)
        {
            var beyond = Area(jar.Density, act, x, Y);
            if (!beyond.IsEmpty)
                svg.Start("path").Has("class", "fd-beyond").Has("fill", $"url(#{id}-hatch)").Has("d", beyond.ToString()).End();
        }
    }

    private static PathText Area(IReadOnlyList<DensityPoint> curve, double from, Func<double, double> x, Func<double, double> y)
    {
        var path = new PathText();
        for (var i = 0; i < curve.Count; i++)
        {
            if (curve[i].Level < from)
                continue;
            if (path.IsEmpty)
            {
                var start = curve[i];
                if (i > 0 && start.Level > from)
                {
                    var before = curve[i - 1];
                    var share = (from - before.Level) / (start.Level - before.Level);
                    start = new(from, before.Height + share * (start.Height - before.Height));
                }

                path.Move(x(start.Level), PlotBottom).Line(x(start.Level), y(start.Height));
            }

            path.Line(x(curve[i].Level), y(curve[i].Height));
        }

        return path.IsEmpty ? path : path.Line(x(curve[^1].Level), PlotBottom).Close();
    }

    // The axis holds the interval and the lines, and as much of the curve's tail as still has height.
    private static double Axis(JarPicture jar)
    {
        var top = Math.Max(jar.Upper, Math.Max(jar.Level, Math.Max(jar.Act ?? 0, jar.Watch ?? 0))) * 1.1;
        return Math.Max(top, 1);
    }

    private static double Step(double top)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(top)));
        return (top / step) switch
        {
            < 2 => step / 5,
            < 5 => step / 2,
            _ => step,
        };
    }

    private static void Require(JarPicture jar)
    {
        if (!StripCheck.IsLevel(jar.Level) || !StripCheck.IsLevel(jar.Lower) || !StripCheck.IsLevel(jar.Upper) || jar.Lower > jar.Upper)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A jar with level {jar.Level} and interval {jar.Lower} to {jar.Upper} cannot be drawn: all must be finite and not negative, the lower end first."), nameof(jar));
        if (!StripCheck.IsLevel(jar.Watch ?? 0) || !StripCheck.IsLevel(jar.Act ?? 0))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The lines (watch {jar.Watch}, act {jar.Act}) must be finite and not negative."), nameof(jar));
        if (jar.ChanceOverAct is { } chance && chance is not (>= 0 and <= 1))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The chance above the line is {chance}, but a chance lies between 0 and 1."), nameof(jar));
        var before = double.NegativeInfinity;
        foreach (var point in jar.Density)
        {
            if (!StripCheck.IsLevel(point.Level) || !StripCheck.IsLevel(point.Height) || point.Level < before)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The curve's point {point.Level} with height {point.Height} must be finite, not negative and in ascending order."), nameof(jar));
            before = point.Level;
        }
    }
}
