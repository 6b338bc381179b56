using System.Globalization;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>Today's line through a strip, with its tag among the months.</summary>
internal sealed class TodayTag
{
    private readonly string _title;
    private readonly string _text;
    private readonly double _x;
    private readonly double _left;
    private readonly double _right;

    private TodayTag(string title, string text, double x, double left, double right) =>
        (_title, _text, _x, _left, _right) = (title, text, x, left, right);

    /// <summary>Today's tag, or null when today is not shown.</summary>
    public static TodayTag? Of(SeasonStrip strip, StripLayout layout, DayScale days, DrawingShape shape, CultureInfo culture)
    {
        if (!days.Holds(strip.Today))
            return null;
        var pattern = culture.DateTimeFormat.MonthDayPattern;
        var form = pattern.StartsWith('M') ? "MMM d" : pattern.StartsWith("d.", StringComparison.Ordinal) ? "d. MMM" : "d MMM";
        var text = shape == DrawingShape.Narrow ? DrawingTexts.Today : DrawingTexts.FormatTodayShort(strip.Today.ToString(form, culture));
        var half = TextWidth.Of(text, layout.Font) / 2 + 4;
        var x = days.Middle(strip.Today);
        var middle = Math.Clamp(x, layout.Left + half, layout.Right - half);
        return new(DrawingTexts.FormatTodayLong(Say.Day(strip.Today)), text, x, middle - half, middle + half);
    }

    /// <summary>Whether the tag lies on a stretch of the month names.</summary>
    public bool Covers(double left, double right) => left < _right && right > _left;

    /// <summary>Draws line and tag.</summary>
    public void Draw(Svg svg, StripLayout layout)
    {
        svg.Group("fd-today").Title(_title);
        svg.Line("fd-now", _x, layout.DueMiddle - 9, _x, layout.PlotBottom + 4);
        svg.Rect("fd-tag", _left, layout.PlotBottom + 2, _right - _left, layout.Font + 3, 3);
        svg.Text("fd-inverse", (_left + _right) / 2, layout.MonthLine - 0.5, layout.Font, "middle", _text);
        svg.End();
    }
}
