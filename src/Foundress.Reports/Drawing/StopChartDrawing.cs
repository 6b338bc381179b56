using System.Globalization;
using Foundress.Science.Sampling;

namespace Foundress.Reports.Drawing;

/// <summary>Draws the chart by which a round may stop early: jars taken across, mites counted so far upwards, and the two lines. Made to be printed and written on.</summary>
public static class StopChartDrawing
{
    private const double Font = 13;
    private const double Height = 380;

    /// <summary>The chart as an SVG element.</summary>
    /// <param name="title">Which apiary.</param>
    /// <param name="sentence">What the rule tells apart, in words.</param>
    /// <param name="lines">The rows of the chart, one for each number of jars from 1 on; at least one.</param>
    /// <param name="taken">Mites so far after each jar already taken; empty for a chart to fill in by hand.</param>
    /// <param name="id">The element's id, unique on its page.</param>
    /// <param name="shape">Narrow is 360 units wide, wide 640.</param>
    /// <param name="culture">Whose numbers to write.</param>
    /// <exception cref="ArgumentException">The id is not a plain name, or there is no row.</exception>
    public static string Draw(
        string title, string sentence, IReadOnlyList<SequentialLine> lines, IReadOnlyList<int> taken, string id, DrawingShape shape, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(taken);
        if (lines.Count == 0)
            throw new ArgumentException("There is nothing to draw: a chart has a row for at least one jar.", nameof(lines));
        var width = shape == DrawingShape.Narrow ? 360d : 640d;
        const double left = 44;
        const double top = 14;
        const double bottom = Height - 42;
        var right = width - 12;
        var most = lines.Max(line => line.ActFrom) + 3;
        var step = (right - left) / (lines.Count + 0.5);
        double X(double jars) => left + (jars * step);
        double Y(double mites) => bottom - ((bottom - top) * Math.Clamp(mites, 0, most) / most);

        var svg = Svg.Picture(id, "fd-stop", width, Height, title, sentence);
        foreach (var mites in Ticks(most))
        {
            svg.Line(mites == 0 ? "fd-base" : "fd-rule", left, Y(mites), right, Y(mites));
            svg.Text("fd-quiet", left - 6, Y(mites) + 4, Font, "end", mites.ToString(culture));
        }

        var every = Math.Max(1, (int)Math.Ceiling(lines.Count / (shape == DrawingShape.Narrow ? 10d : 20d)));
        for (var jars = 1; jars <= lines.Count; jars++)
        {
            svg.Line("fd-rule", X(jars), top, X(jars), bottom);
            if (jars % every == 0 || jars == 1)
                svg.Text("fd-quiet", X(jars), bottom + 17, Font, "middle", jars.ToString(culture));
        }

        Stairs(svg, "fd-act", lines, line => line.ActFrom - 0.5, X, Y);
        Stairs(svg, "fd-watch", [.. lines.Where(line => line.WaitUpTo is not null)], line => line.WaitUpTo!.Value + 0.5, X, Y);
        svg.Text("fd-ink fd-strong fd-halo", X(0.6), top + 16, Font + 1, "start", DrawingTexts.StopAct);
        svg.Text("fd-ink fd-strong fd-halo", right - 4, bottom - 8, Font + 1, "end", DrawingTexts.StopWait);
        var middle = lines[Math.Min(lines.Count - 1, lines.Count / 3)];
        svg.Text("fd-ink fd-halo", X(middle.Jars), Y(((middle.WaitUpTo ?? 0) + middle.ActFrom) / 2d) + 4, Font, "middle", DrawingTexts.GoOn);
        svg.Text("fd-quiet", (left + right) / 2, Height - 6, Font, "middle", DrawingTexts.JarsTaken);
        svg.Start("text").Has("class", "fd-quiet").Has("font-size", Font).Has("text-anchor", "middle").Has("transform", $"translate(13 {Svg.Number((top + bottom) / 2)}) rotate(-90)").Says(DrawingTexts.MitesSoFar).End();

        for (var i = 0; i < taken.Count && i < lines.Count; i++)
        {
            if (i > 0)
                svg.Line("fd-now", X(i), Y(taken[i - 1]), X(i + 1), Y(taken[i]));
        }

        for (var i = 0; i < taken.Count && i < lines.Count; i++)
        {
            svg.Group("fd-below");
            svg.Circle("fd-solid", X(i + 1), Y(taken[i]), 4.5);
            svg.End();
        }

        return svg.Finish();
    }

    // Each jar's whole number holds from half a jar before it to half a jar after.
    private static void Stairs(Svg svg, string kind, IReadOnlyList<SequentialLine> lines, Func<SequentialLine, double> mites, Func<double, double> x, Func<double, double> y)
    {
        if (lines.Count == 0)
            return;
        var path = new PathText();
        for (var i = 0; i < lines.Count; i++)
        {
            var at = y(mites(lines[i]));
            if (i == 0)
                path.Move(x(lines[i].Jars - 0.5), at);
            else
                path.Line(x(lines[i].Jars - 0.5), at);
            path.Line(x(lines[i].Jars + 0.5), at);
        }

        svg.Path(kind, path);
    }

    private static IEnumerable<int> Ticks(int most)
    {
        var step = 1;
        while (most / step > 9)
            step = step.ToString(CultureInfo.InvariantCulture)[0] == '2' ? step * 5 / 2 : step * 2;
        for (var mites = 0; mites <= most; mites += step)
            yield return mites;
    }
}
