using Foundress.Book.Judging;
using Foundress.Science.Judging;

namespace Foundress.Reports.Drawing;

/// <summary>Draws what the marks of the pictures mean.</summary>
public static class KeyDrawing
{
    private const double Font = 13;
    private const double Line = 22;
    private const double Sign = 22;

    /// <summary>Draws the key as an SVG element.</summary>
    /// <param name="id">The element's id, unique on its page.</param>
    /// <param name="shape">Narrow is 360 units wide, wide 1000.</param>
    /// <exception cref="ArgumentException">The id is not a plain name.</exception>
    public static string Draw(string id, DrawingShape shape)
    {
        var width = shape == DrawingShape.Narrow ? 360d : 1000d;
        (string Name, string Kind, Action<Svg, double, double> Draw)[] items =
        [
            (DrawingTexts.KeyBelow, "fd-jar fd-below", (svg, x, y) => Symbols.Jar(svg, Standing.Below, x, y, 5)),
            (DrawingTexts.KeyUnclear, "fd-jar fd-unclear", (svg, x, y) => Symbols.Jar(svg, Standing.Unclear, x, y, 5)),
            (DrawingTexts.KeyAbove, "fd-jar fd-above", (svg, x, y) => Symbols.Jar(svg, Standing.Above, x, y, 5)),
            (DrawingTexts.KeyOtherScale, "fd-jar fd-other", (svg, x, y) => Symbols.Jar(svg, null, x, y, 4.5)),
            (DrawingTexts.KeyInterval, "fd-jar fd-other", (svg, x, y) => svg.Line("fd-whisker", x, y - 7, x, y + 7).Line("fd-whisker", x - 3, y - 7, x + 3, y - 7).Line("fd-whisker", x - 3, y + 7, x + 3, y + 7)),
            (DrawingTexts.KeyActLine, "fd-lines", (svg, x, y) => svg.Line("fd-act", x - 9, y, x + 9, y)),
            (DrawingTexts.KeyWatchLine, "fd-lines", (svg, x, y) => svg.Line("fd-watch", x - 9, y, x + 9, y)),
            (DrawingTexts.KeyDue, "fd-due", (svg, x, y) => Symbols.Due(svg, false, false, x, y, 5.4)),
            (DrawingTexts.KeyDone, "fd-due fd-done", (svg, x, y) => Symbols.Due(svg, true, false, x, y, 5.4)),
            (DrawingTexts.KeyOverdue, "fd-due fd-overdue", (svg, x, y) => Symbols.Due(svg, false, true, x, y, 5.4)),
            (DrawingTexts.KeyControl, "fd-control", (svg, x, y) => svg.Rect("fd-bar", x - 9, y - 6, 18, 12)),
            (DrawingTexts.KeyMiteFall, "fd-jar fd-other", (svg, x, y) => Symbols.Other(svg, OtherKind.NaturalFall, null, x, y, 5)),
            (DrawingTexts.KeyForecast, "fd-fan", (svg, x, y) => svg.Rect("fd-fan-wide", x - 9, y - 8, 18, 16).Rect("fd-fan-half", x - 9, y - 4, 18, 8).Line("fd-fan-middle", x - 9, y, x + 9, y)),
            (DrawingTexts.KeyBroodOpened, "fd-jar fd-other", (svg, x, y) => Symbols.Other(svg, OtherKind.DroneBrood, null, x, y, 5)),
        ];

        // First the places, so that the picture's height is known before it is begun.
        var places = new (double X, double Y)[items.Length];
        var (left, middle) = (2d, Line / 2);
        for (var i = 0; i < items.Length; i++)
        {
            var wide = Sign + TextWidth.Of(items[i].Name, Font) + 12;
            if (left + wide > width)
                (left, middle) = (2d, middle + Line);
            places[i] = (left, middle);
            left += wide;
        }

        var names = new string[items.Length];
        for (var i = 0; i < items.Length; i++)
            names[i] = items[i].Name;
        var svg = Svg.Picture(id, "fd-key", width, middle + Line / 2, DrawingTexts.KeyTitle, string.Join(", ", names));
        for (var i = 0; i < items.Length; i++)
        {
            svg.Group(items[i].Kind);
            items[i].Draw(svg, places[i].X + 10, places[i].Y);
            svg.End();
            svg.Text("fd-ink", places[i].X + Sign + 2, places[i].Y + Font * 0.35, Font, "start", items[i].Name);
        }

        return svg.Finish();
    }
}
