using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.Seasons;

namespace Foundress.Reports.Drawing;

/// <summary>Draws a forecast as a fan: nine courses in ten lie within the pale band, half of them within the darker one, the middle course is the dotted line.</summary>
internal static class FanDrawing
{
    /// <summary>Draws the fan of a strip into its plot.</summary>
    public static void Draw(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days, CultureInfo culture)
    {
        var points = strip.Fan.Where(point => point.On >= strip.From && point.On <= strip.To).ToList();
        if (points.Count < 2)
            return;
        var last = points[^1];
        svg.Group("fd-fan").Title(string.Create(culture, $"Forecast to {Wording.LevelText.Day(last.On)}: {Wording.LevelText.Reading(last.Middle, last.Low, last.High, culture)} per 100 bees; nine courses in ten lie within"));
        Band(svg, "fd-fan-wide", points, point => point.Low, point => point.High, layout, days);
        Band(svg, "fd-fan-half", points, point => point.LowerQuarter, point => point.UpperQuarter, layout, days);
        var middle = new PathText();
        foreach (var point in points)
            Go(middle, days.Middle(point.On), layout.Levels.At(point.Middle));
        svg.Path("fd-fan-middle", middle);
        svg.End();
    }

    private static void Band(Svg svg, string kind, List<FanPoint> points, Func<FanPoint, double> low, Func<FanPoint, double> high, StripLayout layout, DayScale days)
    {
        var path = new PathText();
        foreach (var point in points)
            Go(path, days.Middle(point.On), layout.Levels.At(high(point)));
        for (var i = points.Count - 1; i >= 0; i--)
            path.Line(days.Middle(points[i].On), layout.Levels.At(low(points[i])));
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
