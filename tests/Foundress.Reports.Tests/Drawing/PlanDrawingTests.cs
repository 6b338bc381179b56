using System.Globalization;
using CsCheck;
using Foundress.Book.Forecasts;
using Foundress.Book.Planning;
using Foundress.Book.Seasons;
using Foundress.Reports.Drawing;
using Foundress.Reports.Tests.Support;

namespace Foundress.Reports.Tests.Drawing;

public sealed class PlanDrawingTests
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");
    private static readonly DateOnly Today = new(2026, 7, 20);
    private static readonly DateOnly To = Today.AddDays(182);
    private static readonly LineStep[] Lines = [new(Today, new DateOnly(2026, 10, 31), 2, 3), new(new DateOnly(2026, 11, 1), To, 1, 2)];

    [Fact]
    public void Draw_TwoControls_MatchesStoredPicture() =>
        Approve.Matches("plan.svg", PlanDrawing.Draw(Plan(("Formic acid, short", 7, 14), ("Oxalic acid, trickled", 140, 140)), Lines, To, "plan", English));

    [Fact]
    public void Draw_AnyControls_StayInsideThePicture() =>
        Gen.Select(Gen.Int[0, 200], Gen.Int[0, 90]).Array[0, 3].Sample(
            spans =>
            {
                var svg = PlanDrawing.Draw(Plan([.. spans.Select(span => ("A", span.Item1, span.Item1 + span.Item2))]), Lines, To, "plan", English);
                Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
                foreach (var bar in SvgReader.Parse(svg).Descendants().Where(element => element.Name.LocalName == "rect"))
                {
                    var x = double.Parse(bar.Attribute("x")!.Value, CultureInfo.InvariantCulture);
                    Assert.InRange(x, 20, 345);
                    Assert.InRange(x + double.Parse(bar.Attribute("width")!.Value, CultureInfo.InvariantCulture), 20, 360);
                }
            },
            iter: 60);

    [Fact]
    public void Draw_NoFan_IsRefused() =>
        Assert.Contains("no fan", Assert.Throws<ArgumentException>(() => PlanDrawing.Draw(Plan() with { Fan = [] }, Lines, To, "plan", English)).Message, StringComparison.Ordinal);

    private static PlanChoice Plan(params (string Title, int From, int To)[] controls) => new(
        "A plan", [PlanVirtue.Fewest], ["Why."],
        [.. controls.Select(control => new PlannedControl(control.Title, control.Title, Today.AddDays(control.From), Today.AddDays(control.To), [], []))],
        true, 0.1, Today.AddDays(70), 0.1, 5, 3, 2, null, [],
        [.. Enumerable.Range(0, 27).Select(week => new FanPoint(Today.AddDays(7 * week), 0.1, 0.4, 0.8 + (week * 0.05), 1.5 + (week * 0.1), 4 + (week * 0.3)))],
        "What it comes to.");
}
