using System.Globalization;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>The jars of a strip: points with whiskers, moved apart where they would hide each other.</summary>
internal static class JarMarks
{
    // A day's jars may take this much width: about three weeks on a phone, two on a laptop.
    private const double LeastRoom = 20;
    private const double Room = 0.04;

    // Further than this share of that width no mark is moved, as long as marks are LeastStep apart: visits that crowd before
    // today would else stand weeks off, jars after a control on the wrong side of it.
    private const double Furthest = 0.6;
    private const double LeastStep = 1;
    private const double Closer = 0.8;

    /// <summary>The jars in the order in which they are drawn: by day, then level, then colony.</summary>
    public static List<JarMark> InOrder(IReadOnlyList<JarMark> jars)
    {
        var sorted = new List<JarMark>(jars);
        sorted.Sort(static (left, right) =>
        {
            var order = left.On.CompareTo(right.On);
            if (order == 0)
                order = left.Level.CompareTo(right.Level);
            if (order == 0)
                order = NaturalOrder.Instance.Compare(left.ColonyName, right.ColonyName);
            return order != 0 ? order : left.Jar.Value.CompareTo(right.Jar.Value);
        });
        return sorted;
    }

    /// <summary>Draws whiskers first and points on them.</summary>
    public static void Draw(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days, CultureInfo culture)
    {
        var jars = InOrder(strip.Jars);
        var places = Places(jars, strip.Today, layout, days);
        svg.Group("fd-jars");
        for (var i = 0; i < places.Length; i++)
            Whisker(svg, jars[i], places[i], layout);
        for (var i = 0; i < places.Length; i++)
        {
            var jar = jars[i];
            svg.Group("fd-jar " + Symbols.ClassOf(jar.Standing)).Has("data-jar", jar.Jar.ToString());
            svg.Title(DrawingTexts.FormatJarTold(jar.ColonyName, Say.Day(jar.On), LevelText.Reading(jar.Level, jar.Lower, jar.Upper, culture), Words.Of(jar.Standing)));
            if (jar.Level > LevelScale.Highest)
                Clipped(svg, jar, places[i], layout);
            else
                Symbols.Jar(svg, jar.Standing, places[i], layout.Levels.At(jar.Level), layout.Mark);
            svg.End();
        }

        ClippedLevels(svg, jars, places, layout, culture);
        svg.End();
    }

    private static double[] Places(List<JarMark> jars, DateOnly today, StripLayout layout, DayScale days)
    {
        var room = Math.Max(LeastRoom, (layout.Right - layout.Left) * Room);
        var visits = jars.GroupBy(jar => jar.On).Select(visit => (On: visit.Key, Count: visit.Count())).ToArray();
        var steps = visits.Select(visit => Math.Min(2 * layout.Mark - 1, room / Math.Max(1, visit.Count - 1))).ToArray();

        // What has been counted stands left of today, even when it has been moved.
        var most = layout.Right - layout.Mark - 2;
        if (jars.Count > 0 && days.Holds(today) && jars[^1].On <= today)
            most = Math.Min(most, Math.Max(days.Middle(today) - layout.Mark, layout.Left + layout.Mark + 1));
        while (true)
        {
            double[] places = [.. jars.Select(jar => days.Middle(jar.On))];
            double[] gaps = [.. visits.SelectMany((visit, i) => Enumerable.Repeat(steps[i], visit.Count))];
            Spread.Apart(places, gaps, layout.Left + layout.Mark + 1, most);
            var closer = false;
            for (int visit = 0, first = 0; visit < visits.Length; first += visits[visit++].Count)
            {
                var day = days.Middle(visits[visit].On);
                if (steps[visit] * Closer < LeastStep || Math.Max(day - places[first], places[first + visits[visit].Count - 1] - day) <= Furthest * room)
                    continue;
                (steps[visit], closer) = (steps[visit] * Closer, true);
            }

            if (!closer)
                return places;
        }
    }

    private static void Whisker(Svg svg, JarMark jar, double x, StripLayout layout)
    {
        var kind = "fd-whisker " + Symbols.ClassOf(jar.Standing);
        var low = layout.Levels.At(jar.Lower);
        // An interval that goes on above the picture has no cap there.
        var open = jar.Upper > LevelScale.Highest;
        var high = open ? layout.PlotTop : layout.Levels.At(jar.Upper);
        if (jar.Lower > LevelScale.Highest)
            low = layout.PlotTop + 14;
        svg.Line(kind, x, low, x, high);
        if (!open)
            svg.Line(kind, x - 2, high, x + 2, high);
        if (jar.Lower > 0 && jar.Lower <= LevelScale.Highest)
            svg.Line(kind, x - 2, low, x + 2, low);
    }

    private static void Clipped(Svg svg, JarMark jar, double x, StripLayout layout)
    {
        Symbols.Jar(svg, jar.Standing, x, layout.PlotTop + 9, layout.Mark);
        svg.Path("fd-solid", new PathText().Move(x, layout.PlotTop - 4).Line(x + 3, layout.PlotTop + 1).Line(x - 3, layout.PlotTop + 1).Close());
    }

    // The values of marks above the scale; neighbours share one label, for example "25-36".
    private static void ClippedLevels(Svg svg, List<JarMark> jars, double[] places, StripLayout layout, CultureInfo culture)
    {
        var free = layout.Left;
        for (var start = 0; start < places.Length;)
        {
            if (jars[start].Level <= LevelScale.Highest)
            {
                start++;
                continue;
            }

            var (end, low, high) = (start, double.PositiveInfinity, 0d);
            for (var i = start; i < places.Length && places[i] - places[end] < 3 * layout.Font; i++)
            {
                if (jars[i].Level <= LevelScale.Highest)
                    continue;
                (end, low, high) = (i, Math.Min(low, jars[i].Level), Math.Max(high, jars[i].Level));
            }

            var (first, last) = (low.ToString("0", culture), high.ToString("0", culture));
            var text = first == last ? first : $"{first}\u2013{last}";
            var width = TextWidth.Of(text, layout.Font);
            var before = places[start] - layout.Mark - 4 - width;
            var left = before >= free ? before : places[end] + layout.Mark + 4;
            if (left + width <= layout.Right)
                svg.Text("fd-ink fd-halo", left, layout.PlotTop + 9 + layout.Font * 0.35, layout.Font, "start", text);
            free = Math.Max(left + width, places[end] + layout.Mark) + 4;
            start = end + 1;
        }
    }
}
