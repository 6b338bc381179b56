using System.Globalization;
using Foundress.Book.Planning;
using Foundress.Book.Seasons;

namespace Foundress.Reports.Drawing;

/// <summary>Draws a plan of controls small: the fan of any one colony, the lines of the season as steps, the controls as numbered bars under it.</summary>
public static class PlanDrawing
{
    private const double Width = 360;
    private const double Height = 178;
    private const double Left = 26;
    private const double Right = 354;
    private const double Top = 8;
    private const double Bottom = 122;
    private const double Font = 12;
    private const double Bar = 15;

    /// <summary>The picture as an SVG element.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="lines">The lines in force.</param>
    /// <param name="to">The last day shown.</param>
    /// <param name="id">The element's id, unique on its page.</param>
    /// <param name="culture">Whose numbers and months to write.</param>
    /// <exception cref="ArgumentException">The id is not a plain name, or the plan has no fan.</exception>
    public static string Draw(PlanChoice plan, IReadOnlyList<LineStep> lines, DateOnly to, string id, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(lines);
        if (plan.Fan.Count < 2)
            throw new ArgumentException("There is nothing to draw: the plan has no fan.", nameof(plan));
        var from = plan.Fan[0].On;
        var days = new DayScale(from, to, Left, Right);
        var levels = new LevelScale(Bottom, Top);
        var svg = Svg.Picture(id, "fd-plan", Width, Height, plan.Title, plan.Sentence);
        foreach (var level in (ReadOnlySpan<double>)[0, 1, 3, 10])
        {
            svg.Line(level == 0 ? "fd-base" : "fd-rule", Left, levels.At(level), Right, levels.At(level));
            svg.Text("fd-quiet", Left - 5, levels.At(level) + 4, Font, "end", level.ToString("0", culture));
        }

        Months(svg, days, culture);
        FanDrawing.Draw(svg, [.. plan.Fan], levels, days, culture);
        Lines(svg, lines, levels, days);
        Controls(svg, plan, days);
        return svg.Finish();
    }

    private static void Months(Svg svg, DayScale days, CultureInfo culture)
    {
        for (var month = new DateOnly(days.From.Year, days.From.Month, 1).AddMonths(1); month <= days.To; month = month.AddMonths(1))
        {
            svg.Line("fd-rule", days.Begin(month), Top, days.Begin(month), Bottom);
            if (days.To.DayNumber - month.DayNumber > 12)
                svg.Text("fd-quiet", days.Begin(month) + 2, Bottom + Font + 2, Font, "start", month.ToString("MMM", culture));
        }
    }

    private static void Lines(Svg svg, IReadOnlyList<LineStep> lines, LevelScale levels, DayScale days)
    {
        var path = new PathText();
        foreach (var line in lines)
        {
            var at = levels.At(line.Act);
            if (path.IsEmpty)
                path.Move(days.Begin(line.From), at);
            else
                path.Line(days.Begin(line.From), at);
            path.Line(days.End(line.To), at);
        }

        if (!path.IsEmpty)
            svg.Path("fd-act", path);
    }

    // Bars that overlap stand in two rows; what is done in a day is a bar just wide enough for its number.
    private static void Controls(Svg svg, PlanChoice plan, DayScale days)
    {
        var over = (Left, Left);
        for (var i = 0; i < plan.Controls.Count; i++)
        {
            var control = plan.Controls[i];
            var begin = Math.Min(days.Begin(control.Start), Right - Bar);
            var end = Math.Max(days.End(control.End), begin + Bar);
            var second = begin < over.Item1;
            over = second ? (over.Item1, end) : (end, over.Item2);
            var top = Bottom + 20 + (second ? Bar + 3 : 0);
            svg.Group("fd-control").Title(DrawingTexts.FormatPlanControlDays(i + 1, control.Title, Book.Wording.Say.Day(control.Start), Book.Wording.Say.Day(control.End)));
            svg.Rect("fd-ribbon", begin, top, end - begin, Bar, 2);
            svg.Text("fd-ink fd-strong", begin + 4, top + 12, Font, "start", (i + 1).ToString(CultureInfo.InvariantCulture));
            svg.End();
        }
    }
}
