using System.Globalization;
using Foundress.Science.Sampling;

namespace Foundress.Reports.Drawing;

/// <summary>Draws what each number of colonies buys: how precise, how likely to find one over the line, how often wrong.</summary>
public static class DesignDrawing
{
    private const double Font = 13;
    private const double Row = 34;
    private const double Top = 58;

    /// <summary>The table as an SVG element; its height grows with the rows.</summary>
    /// <param name="title">Which apiary.</param>
    /// <param name="sentence">What the planned number buys in words.</param>
    /// <param name="rows">Numbers of colonies, fewest first; at least one.</param>
    /// <param name="planned">The number planned: its row is marked.</param>
    /// <param name="id">The element's id, unique on its page.</param>
    /// <param name="shape">Narrow is 360 units wide, wide 640.</param>
    /// <param name="culture">Whose numbers to write.</param>
    /// <exception cref="ArgumentException">The id is not a plain name, or there is no row.</exception>
    public static string Draw(string title, string sentence, IReadOnlyList<DesignRow> rows, int planned, string id, DrawingShape shape, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count == 0)
            throw new ArgumentException("There is nothing to draw: give at least one number of colonies.", nameof(rows));
        var narrow = shape == DrawingShape.Narrow;
        var width = narrow ? 360d : 640d;
        var names = narrow ? 62d : 110d;
        var panel = (width - names) / 3;
        var svg = Svg.Picture(id, "fd-design", width, Top + (rows.Count * Row) + 4, title, sentence);
        string[][] heads = narrow
            ? [Lines(DrawingTexts.MeanWithinShort), Lines(DrawingTexts.FindsOneShort), Lines(DrawingTexts.MissesHighShort)]
            : [Lines(DrawingTexts.MeanWithin), Lines(DrawingTexts.FindsOne), Lines(DrawingTexts.MissesHigh)];
        for (var p = 0; p < heads.Length; p++)
        {
            svg.Text("fd-ink fd-strong", names + (p * panel) + 6, 22, Font, "start", heads[p][0]);
            svg.Text("fd-ink fd-strong", names + (p * panel) + 6, 39, Font, "start", heads[p][1]);
        }

        svg.Text("fd-quiet", 2, 39, Font, "start", narrow ? DrawingTexts.Jars : DrawingTexts.ColoniesAJarEach);
        // The widest error fills the panel, so that the bars tell the numbers apart.
        var worst = Math.Max(0.01, rows.Max(row => Within(row)));
        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i];
            var y = Top + (i * Row);
            var chosen = row.Plan.Sample.Take == planned;
            svg.Group(chosen ? "fd-row fd-below" : "fd-row fd-other").Has("data-take", row.Plan.Sample.Take.ToString(CultureInfo.InvariantCulture));
            if (chosen)
                svg.Rect("fd-ahead", 0, y, width, Row - 2, 4);
            var all = row.Plan.Sample.Take == row.Plan.Sample.OutOf;
            var name = all ? DrawingTexts.FormatAllOf(row.Plan.Sample.OutOf) : DrawingTexts.FormatSomeOf(row.Plan.Sample.Take, row.Plan.Sample.OutOf);
            svg.Text(chosen ? "fd-ink fd-strong" : "fd-ink", 4, y + 21, Font, "start", name);
            Bar(svg, names, y, panel, Within(row) / worst, Percent(Within(row), culture));
            Bar(svg, names + panel, y, panel, row.FindsOne.Value, Percent(row.FindsOne.Value, culture));
            Bar(svg, names + (2 * panel), y, panel, row.WaitsTooLong.Value, Percent(row.WaitsTooLong.Value, culture));
            svg.End();
        }

        return svg.Finish();
    }

    /// <summary>Half the width of the interval that holds the mean 19 times in 20, as a share of the mean.</summary>
    public static double Within(DesignRow row) => 1.96 * row.RelativeError;

    // A head has two lines: where a language breaks it stands in its text.
    private static string[] Lines(string head) => head.Split('\n', 2);

    private static string Percent(double share, CultureInfo culture) => share switch
    {
        < 0.005 => DrawingTexts.Under1Percent,
        > 0.995 and < 1 => DrawingTexts.Over99Percent,
        _ => Math.Round(100 * share).ToString("0", culture) + " %",
    };

    private static void Bar(Svg svg, double left, double y, double panel, double share, string text)
    {
        var room = panel - 14;
        svg.Text("fd-ink", left + 6, y + 13, Font, "start", text);
        svg.Line("fd-rule", left + 6, y + 26, left + 6 + room, y + 26);
        svg.Rect("fd-solid", left + 6, y + 18, room * Math.Clamp(share, 0, 1), 8);
    }
}
