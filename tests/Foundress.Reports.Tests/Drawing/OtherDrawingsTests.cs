using System.Globalization;
using CsCheck;
using Foundress.Reports.Drawing;
using Foundress.Reports.Tests.Support;
using Foundress.Science.Judging;

namespace Foundress.Reports.Tests.Drawing;

public sealed class OtherDrawingsTests
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    // 14 mites in 320 bees: interval and chance from SciPy, gamma shape 14.5 and rate 320.
    private static JarPicture Fourteen => new(
        "Hive 7, 2026-08-22", "4.38 per 100 (2.39 to 7.34): above the line of 3, chance 92 %.", 4.375, 2.39185, 7.34051, 2, 3, Standing.Above, 0.91605, Gamma(14.5, 3.2, 12));

    private static JarPicture None => new(
        "Hive 2", "No mite in 300 bees: up to 1.23 per 100 is possible.", 0, 0, 1.23, null, 3, Standing.Below, 0.0000234, Gamma(0.5, 3, 4));

    private static ScoopPicture Scoop => new("Counted jars", "Eight counted jars.", [310, 355, 342, 328, 330, 329, 331, 250], 300, 322, 239, 434);

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void DrawScoop_EightJars_MatchesStoredPicture(DrawingShape shape) =>
        Approve.Matches($"scoop-{shape}.svg", ScoopDrawing.Draw(Scoop, "scoop", shape, English));

    [Fact]
    public void DrawScoop_AnyCountedJars_StayInsideThePicture() =>
        Gen.Int[1, 5000].Array[0, 300].Sample(counted =>
        {
            var svg = ScoopDrawing.Draw(Scoop with { Counted = counted }, "scoop", DrawingShape.Narrow, English);
            Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
            foreach (var dot in SvgReader.Parse(svg).Descendants().Where(element => element.Name.LocalName == "circle"))
            {
                Assert.InRange(double.Parse(dot.Attribute("cx")!.Value, CultureInfo.InvariantCulture), 0, 360);
                Assert.InRange(double.Parse(dot.Attribute("cy")!.Value, CultureInfo.InvariantCulture), 20, 80);
            }
        }, iter: 60);

    [Fact]
    public void DrawScoop_IntervalTurnedRound_NamesIt() => Assert.Contains(
        "434", Assert.Throws<ArgumentException>(() => ScoopDrawing.Draw(Scoop with { Lower = 434, Upper = 239 }, "scoop", DrawingShape.Wide, English)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void DrawJar_FourteenMites_MatchesStoredPicture(DrawingShape shape) =>
        Approve.Matches($"jar-fourteen-{shape}.svg", JarDrawing.Draw(Fourteen, "jar", shape, English));

    [Fact]
    public void DrawJar_NoMites_MatchesStoredPicture() =>
        Approve.Matches("jar-none.svg", JarDrawing.Draw(None, "jar", DrawingShape.Narrow, English));

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void DrawRank_Orchard_MatchesStoredPicture(DrawingShape shape) =>
        Approve.Matches($"rank-{shape}.svg", RankDrawing.Draw("Orchard edge", "Highest first.", OrchardRows(), 2, 3, "rank", shape, English));

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void DrawKey_Always_MatchesStoredPicture(DrawingShape shape) =>
        Approve.Matches($"key-{shape}.svg", KeyDrawing.Draw("key", shape));

    [Fact]
    public void DrawJar_AnyJar_IsWellFormedSafeAndInside() =>
        Gen.Select(Gen.Double[0, 400].Array[3], Gen.Double[0, 50], Gen.Double[0, 1], Gen.Double[0.5, 80], Gens.Name).Sample((levels, act, chance, shape, name) =>
        {
            Array.Sort(levels);
            var jar = new JarPicture(name, name, levels[1], levels[0], levels[2], act / 2, act, Standing.Unclear, chance, Gamma(shape, 0.4, 500));
            var root = SvgReader.Parse(JarDrawing.Draw(jar, "j", DrawingShape.Narrow, CultureInfo.InvariantCulture));
            SvgReader.AssertSafe(root);
            SvgReader.AssertInside(root);
        });

    [Fact]
    public void DrawRank_AnyRows_IsWellFormedSafeAndInside() => Gens.Strip.Sample(
        strip =>
        {
            var rows = strip.Jars.Select(jar => new RankRow(jar.ColonyName, jar.Level, jar.Lower, jar.Upper, jar.Standing, jar.Jar)).ToList();
            var root = SvgReader.Parse(RankDrawing.Draw(strip.Apiary, strip.Sentence, rows, null, 3, "r", DrawingShape.Narrow, CultureInfo.InvariantCulture));
            SvgReader.AssertSafe(root);
            SvgReader.AssertInside(root);
            Assert.Equal(rows.Count, root.OfClass("fd-jar").Count());
        },
        iter: 100);

    [Fact]
    public void RankInOrder_EqualLevels_OrdersByUpperEndThenName()
    {
        var rows = RankDrawing.InOrder([new("Hive 10", 1, 0, 2, null), new("Hive 2", 1, 0, 2, null), new("Hive 3", 1, 0, 3, null), new("Hive 4", 5, 0, 6, null)]);
        Assert.Equal(["Hive 4", "Hive 3", "Hive 2", "Hive 10"], rows.Select(row => row.Name));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(1.5)]
    [InlineData(-0.1)]
    public void DrawJar_ChanceThatIsNone_NamesIt(double chance)
    {
        var error = Assert.Throws<ArgumentException>(() => JarDrawing.Draw(Fourteen with { ChanceOverAct = chance }, "j", DrawingShape.Wide, English));
        Assert.Contains("between 0 and 1", error.Message, StringComparison.Ordinal);
    }

    private static List<RankRow> OrchardRows() =>
        [.. Invented.Orchard().Jars.Where(jar => jar.On == Invented.Day(2026, 8, 22)).Select(jar => new RankRow(jar.ColonyName, jar.Level, jar.Lower, jar.Upper, jar.Standing, jar.Jar))];

    private static DensityPoint[] Gamma(double shape, double rate, double to)
    {
        var points = new DensityPoint[121];
        for (var i = 0; i < points.Length; i++)
        {
            var level = to * (i + 0.02) / 120;
            points[i] = new(level, Math.Exp((shape - 1) * Math.Log(level / (shape / rate)) - rate * level + shape));
        }

        return points;
    }
}
