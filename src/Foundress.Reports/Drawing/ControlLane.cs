using Foundress.Book.Seasons;
using Foundress.Book.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>Draws the controls as bars in a lane of their own under the due dates; one that is open has no right edge.</summary>
internal static class ControlLane
{
    private const int MostRows = 3;

    /// <summary>On which row each bar stands, so that bars of one row do not touch; more than three rows are not drawn apart.</summary>
    public static int[] Rows(IReadOnlyList<ControlBar> bars)
    {
        var ends = new DateOnly[MostRows];
        var rows = new int[bars.Count];
        for (var i = 0; i < rows.Length; i++)
        {
            var row = Array.FindIndex(ends, end => end == default || end < bars[i].From);
            rows[i] = row < 0 ? MostRows - 1 : row;
            if (bars[i].To > ends[rows[i]])
                ends[rows[i]] = bars[i].To;
        }

        return rows;
    }

    /// <summary>How many rows the bars need.</summary>
    public static int Count(IReadOnlyList<ControlBar> bars) => bars.Count == 0 ? 0 : Rows(bars).Max() + 1;

    /// <summary>Draws the lane; nothing when the strip has no controls.</summary>
    public static void Draw(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days)
    {
        if (strip.Controls.Count == 0)
            return;
        var rows = Rows(strip.Controls);
        var height = layout.ControlRow - 4;
        svg.Group("fd-controls");
        for (var i = 0; i < rows.Length; i++)
        {
            var bar = strip.Controls[i];
            var top = layout.ControlsTop + (rows[i] * layout.ControlRow);
            var left = days.Begin(bar.From);
            // What is done in a day would be too thin to see.
            var right = Math.Min(layout.Right, Math.Max(days.End(bar.To), left + 4));
            svg.Group(bar.Open ? "fd-control fd-running" : "fd-control").Title(DrawingTexts.FormatControlDays(Words(bar), Say.Day(bar.From), Say.Day(bar.To)));
            svg.Rect("fd-bar", left, top, right - left, height);
            if (bar.Open)
                svg.Path("fd-cut", new PathText().Move(right - 7, top).Line(right - 2, top + (height / 2)).Line(right - 7, top + height));
            svg.End();
            var free = Next(strip.Controls, rows, i, days, layout.Right) - right - 6;
            var width = TextWidth.Of(bar.Title, layout.Font);
            if (width <= right - left - 8)
                svg.Text("fd-inverse", left + 4, top + (height / 2) + (layout.Font * 0.35), layout.Font, "start", bar.Title);
            else if (width <= free)
                svg.Text("fd-ink fd-halo", right + 4, top + (height / 2) + (layout.Font * 0.35), layout.Font, "start", bar.Title);
        }

        svg.End();
    }

    /// <summary>A bar in words, without its days.</summary>
    public static string Words(ControlBar bar)
    {
        var inColonies = Say.InColonies(bar.Colonies);
        return bar.Ending.Length > 0 ? DrawingTexts.FormatControlInEnded(bar.Title, inColonies, bar.Ending) : DrawingTexts.FormatControlIn(bar.Title, inColonies);
    }

    private static double Next(IReadOnlyList<ControlBar> bars, int[] rows, int i, DayScale days, double right)
    {
        for (var j = i + 1; j < rows.Length; j++)
        {
            if (rows[j] == rows[i])
                return days.Begin(bars[j].From);
        }

        return right;
    }
}
