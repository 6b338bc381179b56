using System.Globalization;
using CsCheck;
using Foundress.Book.Seasons;
using Foundress.Reports.Drawing;
using Foundress.Reports.Tests.Support;

namespace Foundress.Reports.Tests.Drawing;

public sealed class ControlLaneTests
{
    private static readonly SeasonStrip Orchard = Invented.Orchard() with
    {
        Controls =
        [
            new("Oxalic acid, trickled", new(2026, 1, 3), new(2026, 1, 3), false, 12, ""),
            new("Formic acid, long", new(2026, 7, 14), new(2026, 7, 28), false, 8, "in part in 1 colony"),
            new("Thymol", new(2026, 7, 20), new(2026, 8, 26), true, 4, ""),
        ],
    };

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void Draw_Controls_IsAsLookedAt(DrawingShape shape) =>
        Approve.Matches($"strip-controls-{shape}.svg", SeasonStripDrawing.Draw(Orchard, "c", shape, CultureInfo.InvariantCulture));

    [Fact]
    public void Rows_Controls_TellWhatThePictureShows()
    {
        var rows = SeasonStripTable.Rows(Orchard, CultureInfo.InvariantCulture).Where(row => row.Kind == StripRowKind.Control).ToArray();
        Assert.Equal(["Oxalic acid, trickled in 12 colonies", "Formic acid, long in 8 colonies, in part in 1 colony", "Thymol in 4 colonies"], rows.Select(row => row.Finding));
        Assert.Equal(["over", "over", "at work"], rows.Select(row => row.State));
    }

    [Fact]
    public void Draw_BarOutsideTheYear_IsRefusedByName()
    {
        var wrong = Orchard with { Controls = [new("Thymol", new(2025, 1, 3), new(2025, 2, 3), false, 1, "")] };
        Assert.Contains("Thymol", Assert.Throws<ArgumentException>(() => SeasonStripDrawing.Draw(wrong, "c", DrawingShape.Wide, CultureInfo.InvariantCulture)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_AnyBars_DoNotOverlapWhileThereIsRoom() =>
        Gen.Select(Gen.Int[0, 300], Gen.Int[0, 60]).Array[0, 8].Sample(spans =>
        {
            var bars = spans.OrderBy(span => span.Item1).Select(span => new ControlBar("A", Orchard.From.AddDays(span.Item1), Orchard.From.AddDays(span.Item1 + span.Item2), false, 1, "")).ToArray();
            var rows = ControlLane.Rows(bars);
            for (var i = 0; i < bars.Length; i++)
            {
                Assert.InRange(rows[i], 0, 2);
                // In the last row those stand that found no room elsewhere.
                for (var j = 0; j < i; j++)
                    Assert.False(rows[i] == rows[j] && rows[i] < 2 && bars[j].To >= bars[i].From);
            }
        });
}
