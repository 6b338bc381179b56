using System.Globalization;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>
/// Draws the counts on other scales in a lane of their own below the months: their height in the plot would mean nothing,
/// so each carries its number where there is room.
/// </summary>
internal static class OtherMarks
{
    /// <summary>Draws the lane; nothing when the strip has no such counts.</summary>
    public static void Draw(Svg svg, SeasonStrip strip, StripLayout layout, DayScale days, CultureInfo culture)
    {
        if (strip.Others.Count == 0)
            return;
        var marks = new List<OtherMark>(strip.Others);
        marks.Sort(static (left, right) =>
        {
            var order = left.On.CompareTo(right.On);
            return order != 0 ? order : NaturalOrder.Instance.Compare(left.ColonyName, right.ColonyName);
        });
        var places = new double[marks.Count];
        var gaps = new double[marks.Count];
        var half = layout.Mark + 0.8;
        for (var i = 0; i < places.Length; i++)
            (places[i], gaps[i]) = (days.Middle(marks[i].On), (2 * half) + 2);
        Spread.Apart(places, gaps, layout.Left + half, layout.Right - half);

        svg.Group("fd-others");
        for (var i = 0; i < places.Length; i++)
        {
            var reading = marks[i].Reading;
            svg.Group("fd-count " + Symbols.ClassOf(reading.Standing)).Has("data-count", marks[i].Entry.ToString())
                .Title(DrawingTexts.FormatOtherTold(marks[i].ColonyName, Say.Day(marks[i].On), OtherText.Reading(reading, culture), reading.Counted, OtherText.Standing(reading)));
            Symbols.Other(svg, reading.Kind, reading.Standing, places[i], layout.OthersMiddle, half);
            svg.End();
            // A number beside one of several marks would seem to be that of all.
            if (i > 0 && places[i] - places[i - 1] < (2 * half) + 6)
                continue;
            var text = OtherText.Brief(reading, culture);
            var left = places[i] + half + 3;
            var room = (i + 1 < places.Length ? places[i + 1] - half - 3 : layout.Right) - left;
            if (TextWidth.Of(text, layout.Font) <= room)
                svg.Text("fd-quiet", left, layout.OthersMiddle + (layout.Font * 0.35), layout.Font, "start", text);
        }

        svg.End();
    }
}
