using System.Globalization;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;
using Foundress.Reports.Wording;
using Foundress.Science.Judging;

namespace Foundress.Reports.Drawing;

/// <summary>
/// Draws an apiary's year as one strip: what is due, the jars with their intervals against the lines in force, the months,
/// and the season as a ribbon whose height follows the colonies' strength.
/// </summary>
public static class SeasonStripDrawing
{
    /// <summary>Draws a strip as an SVG element, to be coloured by <see cref="Stylesheet.Strip"/>.</summary>
    /// <param name="strip">What to draw.</param>
    /// <param name="id">The element's id, unique on its page; inner ids begin with it.</param>
    /// <param name="shape">For laptop and print, or for a phone.</param>
    /// <param name="culture">Whose numbers and month names to write.</param>
    /// <returns>
    /// The SVG text. Each jar is a group with its id in <c>data-jar</c>; the picture has the strip's sentence as description.
    /// Put <see cref="SeasonStripTable"/> behind it for readers who do not see it.
    /// </returns>
    /// <exception cref="ArgumentException">The id is not a plain name, or the strip holds a value that cannot be drawn; the message names it.</exception>
    public static string Draw(SeasonStrip strip, string id, DrawingShape shape, CultureInfo culture)
    {
        StripCheck.Require(strip);
        var layout = strip.Others.Count == 0 ? StripLayout.Of(shape) : StripLayout.Of(shape).WithOthers();
        layout = layout.WithControls(ControlLane.Count(strip.Controls));
        var days = new DayScale(strip.From, strip.To, layout.Left, layout.Right);
        var title = DrawingTexts.FormatTitleOfDays(strip.Apiary, Say.Day(strip.From), Say.Day(strip.To));
        var svg = Svg.Picture(id, "fd-strip", layout.Width, layout.Height, title, strip.Sentence);
        DrawGround(svg, strip, layout, days, culture);
        DrawSeason(svg, strip, layout, days);
        FanDrawing.Draw(svg, strip, layout, days, culture);
        DrawLines(svg, strip, layout, days, culture);
        var today = TodayTag.Of(strip, layout, days, shape, culture);
        DrawMonths(svg, strip, layout, days, today, culture);
        today?.Draw(svg, layout);
        DrawDues(svg, strip, layout, days);
        ControlLane.Draw(svg, strip, layout, days);
        JarMarks.Draw(svg, strip, layout, days, culture);
        OtherMarks.Draw(svg, strip, layout, days, culture);
        return svg.Finish();
    }

    private static void DrawGround(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days, CultureInfo culture)
    {
        svg.Group("fd-axis");
        if (days.Holds(strip.Today))
            svg.Rect("fd-ahead", days.End(strip.Today), layout.PlotTop, layout.Right - days.End(strip.Today), layout.PlotBottom - layout.PlotTop);
        foreach (var level in LevelScale.Ticks)
        {
            var y = layout.Levels.At(level);
            svg.Line(level == 0 ? "fd-base" : "fd-rule", layout.Left, y, layout.Right, y);
            svg.Text("fd-quiet", layout.Left - 5, y + layout.Font * 0.35, layout.Font, "end", level.ToString("0", culture));
        }

        svg.Text("fd-quiet", 2, layout.Font, layout.Font, "start", DrawingTexts.MitesPer100);
        var years = strip.From.Year == strip.To.Year ? $"{strip.From.Year:0000}" : $"{strip.From.Year:0000}–{strip.To.Year:0000}";
        svg.Text("fd-quiet", layout.Right, layout.Font, layout.Font, "end", years);
        svg.End();
    }

    private static void DrawSeason(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days)
    {
        svg.Group("fd-season");
        var height = layout.RibbonBottom - layout.RibbonTop;
        foreach (var span in strip.Phases)
        {
            if (span.LastDay < strip.From || span.From > strip.To)
                continue;
            var left = days.Begin(span.From);
            var right = days.End(span.LastDay);
            var (start, end) = Strength(span.Phase);
            svg.Group("fd-phase").Title(DrawingTexts.FormatPhaseDays(Words.Of(span.Phase), Say.Day(span.From), Say.Day(span.LastDay)));
            svg.Path("fd-ribbon", new PathText()
                .Move(left, layout.RibbonBottom).Line(left, layout.RibbonBottom - height * start)
                .Line(right, layout.RibbonBottom - height * end).Line(right, layout.RibbonBottom).Close());
            var names = Words.Names(span.Phase);
            var pick = 0;
            while (pick < names.Length && TextWidth.Of(names[pick], layout.Font) > right - left)
                pick++;
            if (pick < names.Length)
                svg.Text("fd-ink", (left + right) / 2, layout.RibbonBottom - (start == end && end < 1 ? height * end + 3 : 4.5), layout.Font, "middle", names[pick]);
            svg.End();
        }

        svg.End();
    }

    // Share of the ribbon's height at the start and the end of a phase: a picture of strength, not a measurement.
    private static (double Start, double End) Strength(SeasonPhase phase) => phase switch
    {
        SeasonPhase.DormantBroodless => (0.15, 0.15),
        SeasonPhase.DormantWithBrood => (0.3, 0.3),
        SeasonPhase.Increase => (0.3, 1),
        SeasonPhase.Peak => (1, 1),
        _ => (1, 0.3),
    };

    private static void DrawLines(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days, CultureInfo culture)
    {
        svg.Group("fd-lines");
        var act = new PathText();
        var watch = new PathText();
        LineStep? before = null;
        foreach (var step in strip.Lines)
        {
            if (step.To < strip.From || step.From > strip.To)
                continue;
            var joined = before is { } last && last.To.AddDays(1) == step.From;
            var left = days.Begin(step.From);
            var right = days.End(step.To);
            var high = layout.Levels.At(step.Act);
            if (step.Watch is { } from && from < step.Act)
                svg.Rect("fd-zone", left, high, right - left, layout.Levels.At(from) - high);
            Extend(act, joined, left, right, high);
            if (step.Watch is { } low)
                Extend(watch, joined && before!.Value.Watch is not null, left, right, layout.Levels.At(low));
            before = step;
        }

        if (!watch.IsEmpty)
            svg.Path("fd-watch", watch);
        if (!act.IsEmpty)
            svg.Path("fd-act", act);

        before = null;
        foreach (var step in strip.Lines)
        {
            if (step.To < strip.From || step.From > strip.To)
                continue;
            var changed = before is not { } last || last.Act != step.Act || last.Watch != step.Watch || last.To.AddDays(1) != step.From;
            before = step;
            var left = days.Begin(step.From) + 3;
            var room = days.End(step.To) - left;
            if (!changed)
                continue;
            Label(svg, strip, layout, days, DrawingTexts.FormatAct(LevelText.Line(step.Act, culture)), left, room, layout.Levels.At(step.Act) - 4);
            if (step.Watch is { } low)
                Label(svg, strip, layout, days, DrawingTexts.FormatWatch(LevelText.Line(low, culture)), left, room, layout.Levels.At(low) + layout.Font);
        }

        svg.End();
    }

    // At the start of the step, or at its end when fewer jars stand there.
    private static void Label(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days, string text, double x, double room, double y)
    {
        var width = TextWidth.Of(text, layout.Font);
        if (width > room)
            return;
        var end = x + room - 3 - width;
        svg.Text("fd-ink fd-halo", end > x && Crowd(strip, days, x, width) > Crowd(strip, days, end, width) ? end : x, y, layout.Font, "start", text);
    }

    private static int Crowd(SeasonStrip strip, DayScale days, double x, double width)
    {
        const double near = 12;
        var count = days.Holds(strip.Today) && days.Middle(strip.Today) >= x && days.Middle(strip.Today) <= x + width ? 1 : 0;
        foreach (var jar in strip.Jars)
        {
            var at = days.Middle(jar.On);
            if (at > x - near && at < x + width + near)
                count++;
        }

        return count;
    }

    private static void Extend(PathText path, bool joined, double left, double right, double y)
    {
        if (joined)
            path.Line(left, y);
        else
            path.Move(left, y);
        path.Line(right, y);
    }

    private static void DrawMonths(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days, TodayTag? today, CultureInfo culture)
    {
        svg.Group("fd-months");
        var free = layout.Left - 4;
        for (var month = new DateOnly(strip.From.Year, strip.From.Month, 1); month <= strip.To; month = month.AddMonths(1))
        {
            var left = days.Begin(month);
            var right = days.End(month.AddMonths(1).AddDays(-1));
            if (month > strip.From)
                svg.Line("fd-tick", left, layout.PlotBottom, left, layout.PlotBottom + 6);
            var name = culture.DateTimeFormat.GetAbbreviatedMonthName(month.Month);
            var half = TextWidth.Of(name, layout.Font) / 2;
            var middle = (left + right) / 2;
            if (middle - half >= free && middle + half <= layout.Right + 4 && today?.Covers(middle - half, middle + half) != true)
            {
                svg.Text("fd-quiet", middle, layout.MonthLine, layout.Font, "middle", name);
                free = middle + half + 1;
            }

            if (month.Year == DateOnly.MaxValue.Year && month.Month == 12)
                break;
        }

        svg.End();
    }

    private static void DrawDues(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days)
    {
        if (strip.Dues.Count == 0)
            return;
        svg.Group("fd-dues");
        var dues = new List<DueMark>(strip.Dues);
        dues.Sort((left, right) => left.On != right.On ? left.On.CompareTo(right.On) : string.CompareOrdinal(left.Text, right.Text));
        var places = new double[dues.Count];
        var gaps = new double[dues.Count];
        var half = layout.Mark + 0.8;
        for (var i = 0; i < places.Length; i++)
            (places[i], gaps[i]) = (days.Middle(dues[i].On), 2 * half + 4);
        Spread.Apart(places, gaps, layout.Left + half, layout.Right - half);

        foreach (var due in dues)
        {
            if (due.To >= strip.From && due.From <= strip.To)
                svg.Line("fd-window", days.Begin(due.From), layout.DueMiddle, days.End(due.To), layout.DueMiddle);
        }

        for (var i = 0; i < places.Length; i++)
        {
            var due = dues[i];
            svg.Group(due.Done ? "fd-due fd-done" : due.Overdue ? "fd-due fd-overdue" : "fd-due")
                .Title(DrawingTexts.FormatDueState(Say.Day(due.On), due.Text, SeasonStripTable.StateOf(due)));
            Symbols.Due(svg, due.Done, due.Overdue, places[i], layout.DueMiddle, half);
            svg.End();
            var left = Math.Max(places[i] + half, days.End(due.To)) + 5;
            var room = (i + 1 < places.Length ? Math.Min(places[i + 1] - half, days.Begin(dues[i + 1].From)) - 6 : layout.Right) - left;
            if (!due.Done && TextWidth.Of(due.Text, layout.Font) <= room)
                svg.Text("fd-ink fd-halo", left, layout.DueMiddle + layout.Font * 0.35, layout.Font, "start", due.Text);
        }

        svg.End();
    }
}
