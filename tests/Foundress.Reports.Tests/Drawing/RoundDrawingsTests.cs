using System.Globalization;
using CsCheck;
using Foundress.Book.Records;
using Foundress.Book.Rounds;
using Foundress.Reports.Drawing;
using Foundress.Reports.Reporting;
using Foundress.Reports.Tests.Support;
using Foundress.Science;
using Foundress.Science.Sampling;

namespace Foundress.Reports.Tests.Drawing;

public sealed class RoundDrawingsTests
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    private static StopRule Rule => new(new EarlyStop(1.5, 4.5, 0.1, 1.3, 300), 8);

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void DrawDesign_FortyColonies_MatchesStoredPicture(DrawingShape shape) =>
        Approve.Matches($"design-{shape}.svg", DesignDrawing.Draw("Orchard edge", "8 of 40.", Rows(40, 1.3), 8, "design", shape, English));

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void DrawStopChart_ThreeJarsTaken_MatchesStoredPicture(DrawingShape shape) =>
        Approve.Matches($"stop-{shape}.svg", StopChartDrawing.Draw("Orchard edge", "Low or high.", Rule.Lines, [4, 9, 11], "stop", shape, English));

    [Fact]
    public void WriteSheet_OneApiaryThatMayStop_MatchesStoredPage() => Approve.Matches(
        "clipboard.html",
        ClipboardSheet.Write("Round of 2026-08-20", ["Alcohol wash, shaken 1 min."], ["Keep the smoker away."], [new ClipboardPart("Orchard <edge>", ["1", "7", "12"], ["3"], "Add up the mites.", Rule.Lines)], English));

    [Fact]
    public void DrawDesign_AnyQuestion_IsWellFormedSafeAndInside() =>
        Gen.Select(Gen.Int[1, 400], Gen.Double[0.05, 50], Gens.Name).Sample((colonies, shape, name) =>
        {
            var root = SvgReader.Parse(DesignDrawing.Draw(name, name, Rows(colonies, shape), 1, "d", DrawingShape.Narrow, CultureInfo.InvariantCulture));
            SvgReader.AssertSafe(root);
            SvgReader.AssertInside(root);
        });

    [Fact]
    public void DrawStopChart_AnyRule_IsWellFormedSafeAndInside() =>
        Gen.Select(Gen.Double[0.2, 5], Gen.Double[1.3, 4], Gen.Double[0.2, 20], Gen.Int[1, 60], Gen.Int[0, 200].Array[0, 70], Gens.Name).Sample((low, ratio, shape, jars, taken, name) =>
        {
            var rule = new StopRule(new EarlyStop(low, low * ratio, 0.1, shape, 300), jars);
            var root = SvgReader.Parse(StopChartDrawing.Draw(name, name, rule.Lines, taken, "s", DrawingShape.Wide, CultureInfo.InvariantCulture));
            SvgReader.AssertSafe(root);
            SvgReader.AssertInside(root);
        });

    private static IReadOnlyList<DesignRow> Rows(int colonies, double shape) => DesignTable.Of(
        new DesignQuestion(colonies, 1, 300, MiteLevel.Per100(3), MiteLevel.Per100(1.5), MiteLevel.Per100(4.5), shape, Math.Max(1, colonies / 10)));
}
