using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Reports.Drawing;
using Foundress.Science;

namespace Foundress.Web.Pages.Jars;

/// <summary>The picture of one jar's answer.</summary>
public static class JarCurve
{
    private const int Steps = 56;

    /// <summary>Draws it.</summary>
    /// <param name="reading">The answer.</param>
    /// <param name="title">What the picture is called.</param>
    /// <param name="id">The drawing's id, unique on the page.</param>
    /// <param name="culture">How numbers are written.</param>
    public static string Draw(JarReading reading, string title, string id, CultureInfo culture)
    {
        var lines = reading.NotJudged is null ? reading.Lines : null;
        var (lower, upper) = (reading.Interval.Lower.Per100Bees, reading.Interval.Upper.Per100Bees);
        var picture = new JarPicture(
            title, JarSaid.Interval(reading, culture), reading.Level.Per100Bees, lower, upper,
            lines?.Act is null ? null : lines.Watch, lines?.Deciding, reading.Standing, reading.OverLine?.Value,
            Density(reading, Math.Max(upper, lines?.Deciding ?? 0) * 1.1));
        return JarDrawing.Draw(picture, id, DrawingShape.Narrow, culture);
    }

    // The chance of lying between two neighbouring levels, over their distance: the density, from the tail that is tested.
    private static List<DensityPoint> Density(JarReading reading, double top)
    {
        var points = new List<DensityPoint>(Steps);
        var step = top / Steps;
        var before = reading.Posterior.ChanceOver(MiteLevel.Per100(0)).Value;
        for (var i = 1; i <= Steps; i++)
        {
            var over = reading.Posterior.ChanceOver(MiteLevel.Per100(i * step)).Value;
            points.Add(new DensityPoint((i - 0.5) * step, Math.Max(0, before - over)));
            before = over;
        }

        return points;
    }
}
