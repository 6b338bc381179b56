using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>Draws a forecast as a fan: nine courses in ten lie within the pale band, half of them within the darker one, the middle course is the dotted line.</summary>
internal static class FanDrawing
{
    /// <summary>Draws the fan of a strip into its plot.</summary>
    public static void Draw(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days, CultureInfo culture)
    {
        Draw(svg, [.. strip.Fan.Where(point => point.On >= strip.From && point.On <= strip.To)], layout.Levels, days, culture);
    }

    /// <summary>Draws a fan by itself.</summary>
    public static void Draw(Svg svg, List<FanPoint> points, LevelScale levels, DayScale days, CultureInfo culture)
    {
        if (points.Count < 2)
            return;
        var last = points[^1];
        svg.Group("fd-fan").Title(DrawingTexts.FormatForecastTo(Say.Day(last.On), Wording.LevelText.Reading(last.Middle, last.Low, last.High, culture)));
        Band(svg, "fd-fan-wide", points, point => point.Low, point => point.High, levels, days);
        Band(svg, "fd-fan-half", points, point => point.LowerQuarter, point => point.UpperQuarter, levels, days);
        var middle = new PathText();
        foreach (var point in points)
            Go(middle, days.Middle(point.On), levels.At(point.Middle));
        svg.Path("fd-fan-middle", middle);
        svg.End();
    }

    private static void Band(Svg svg, string kind, List<FanPoint> points, Func<FanPoint, double> low, Func<FanPoint, double> high, LevelScale levels, DayScale days)
    {
        var path = new PathText();
        foreach (var point in points)
            Go(path, days.Middle(point.On), levels.At(high(point)));
        for (var i = points.Count - 1; i >= 0; i--)
            path.Line(days.Middle(points[i].On), levels.At(low(points[i])));
        svg.Path(kind, path.Close());
    }

    private static void Go(PathText path, double x, double y)
    {
        if (path.IsEmpty)
            path.Move(x, y);
        else
            path.Line(x, y);
    }
}
