using System.Globalization;
using Foundress.Book.State;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>Draws colonies from the highest level to the lowest, each as a mark on its interval, with the line.</summary>
public static class RankDrawing
{
    /// <summary>The rows as they are drawn: highest level first, then highest upper end, then by name.</summary>
    public static IReadOnlyList<RankRow> InOrder(IReadOnlyList<RankRow> rows)
    {
        var sorted = new List<RankRow>(rows);
        sorted.Sort(static (left, right) =>
        {
            var order = right.Level.CompareTo(left.Level);
            if (order == 0)
                order = right.Upper.CompareTo(left.Upper);
            return order != 0 ? order : NaturalOrder.Instance.Compare(left.Name, right.Name);
        });
        return sorted;
    }

    /// <summary>Draws a ranking as an SVG element; its height grows with the rows.</summary>
    /// <param name="title">What is ranked.</param>
    /// <param name="sentence">What the ranking says in words.</param>
    /// <param name="rows">The colonies, in any order.</param>
    /// <param name="watch">From here a control may be needed; null when there is no such line.</param>
    /// <param name="act">Above here a control is needed; null when no line applies to all rows.</param>
    /// <param name="id">The element's id, unique on its page.</param>
    /// <param name="shape">Narrow is 360 units wide, wide 640.</param>
    /// <param name="culture">Whose numbers to write.</param>
    /// <exception cref="ArgumentException">The id is not a plain name, or a row cannot be drawn; the message names it.</exception>
    public static string Draw(
        string title, string sentence, IReadOnlyList<RankRow> rows, double? watch, double? act, string id, DrawingShape shape, CultureInfo culture)
    {
        if (!StripCheck.IsLevel(watch ?? 0) || !StripCheck.IsLevel(act ?? 0))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The lines (watch {watch}, act {act}) must be finite and not negative."), nameof(act));
        var sorted = InOrder(rows);
        const double font = 13;
        const double row = 22;
        const double top = 24;
        var width = shape == DrawingShape.Narrow ? 360d : 640d;
        var names = shape == DrawingShape.Narrow ? 92d : 150d;
        var readings = shape == DrawingShape.Narrow ? 40d : 150d;
        var left = names + 8;
        var right = width - readings - 8;
        var bottom = top + sorted.Count * row;
        // The same scale as the strip's, laid on its side.
        var levels = new LevelScale(left + 6, right - 18);

        var svg = Svg.Picture(id, "fd-rank", width, bottom + 24, title, sentence);
        foreach (var level in LevelScale.Ticks)
        {
            svg.Line(level == 0 ? "fd-base" : "fd-rule", levels.At(level), top, levels.At(level), bottom);
            svg.Text("fd-quiet", levels.At(level), bottom + 15, font, "middle", level.ToString("0", culture));
        }

        if (watch is { } low)
            svg.Line("fd-watch", levels.At(low), top - 2, levels.At(low), bottom);
        if (act is { } high)
        {
            svg.Line("fd-act", levels.At(high), top - 6, levels.At(high), bottom);
            svg.Text("fd-ink", levels.At(high), top - 10, font, "middle", DrawingTexts.FormatAct(LevelText.Line(high, culture)));
        }

        for (var i = 0; i < sorted.Count; i++)
            DrawRow(svg, sorted[i], top + (i + 0.5) * row, names, left, right, width, shape, levels, culture);
        return svg.Finish();
    }

    private static void DrawRow(
        Svg svg, RankRow row, double y, double names, double left, double right, double width, DrawingShape shape, LevelScale levels, CultureInfo culture)
    {
        const double font = 13;
        if (!StripCheck.IsLevel(row.Level) || !StripCheck.IsLevel(row.Lower) || !StripCheck.IsLevel(row.Upper) || row.Lower > row.Upper)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Colony {row.Name} has level {row.Level} with interval {row.Lower} to {row.Upper}: all must be finite and not negative, the lower end first."), nameof(row));
        svg.Group("fd-jar " + Symbols.ClassOf(row.Standing));
        if (row.Jar is { } jar)
            svg.Has("data-jar", jar.ToString());
        var reading = LevelText.Reading(row.Level, row.Lower, row.Upper, culture);
        svg.Title(DrawingTexts.FormatRankTold(row.Name, reading, Words.Of(row.Standing)));
        svg.Text("fd-ink", names, y + font * 0.35, font, "end", TextWidth.Fit(row.Name, font, names - 2));
        var open = row.Upper > LevelScale.Highest;
        var end = open ? right - 2 : levels.At(row.Upper);
        svg.Line("fd-whisker", levels.At(row.Lower), y, end, y);
        if (!open)
            svg.Line("fd-whisker", end, y - 3, end, y + 3);
        svg.Line("fd-whisker", levels.At(row.Lower), y - 3, levels.At(row.Lower), y + 3);
        var clipped = row.Level > LevelScale.Highest;
        Symbols.Jar(svg, row.Standing, clipped ? right - 8 : levels.At(row.Level), y, 5);
        if (clipped)
            svg.Path("fd-solid", new PathText().Move(right + 4, y).Line(right, y - 3).Line(right, y + 3).Close());
        var shown = shape == DrawingShape.Wide ? reading : LevelText.Level(row.Level, culture);
        svg.Text("fd-ink", width - 2, y + font * 0.35, font, "end", shown);
        svg.End();
    }
}
