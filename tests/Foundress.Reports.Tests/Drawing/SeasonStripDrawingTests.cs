using System.Globalization;
using CsCheck;
using Foundress.Reports.Drawing;
using Foundress.Reports.Tests.Support;

namespace Foundress.Reports.Tests.Drawing;

public sealed class SeasonStripDrawingTests
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void Draw_CountsOnOtherScales_StandInALaneOfTheirOwn(DrawingShape shape)
    {
        var strip = Invented.Orchard();
        Approve.Matches($"strip-others-{shape}.svg", SeasonStripDrawing.Draw(strip with { Others = Invented.Others() }, "orchard", shape, English));
        Assert.Equal(3, SeasonStripTable.Rows(strip with { Others = Invented.Others() }, CultureInfo.InvariantCulture).Count(row => row.Kind == StripRowKind.Other));
    }

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void Draw_Orchard_MatchesStoredPicture(DrawingShape shape) =>
        Approve.Matches($"strip-orchard-{shape}.svg", SeasonStripDrawing.Draw(Invented.Orchard(), "orchard", shape, English));

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void Draw_Southern_MatchesStoredPicture(DrawingShape shape) =>
        Approve.Matches($"strip-southern-{shape}.svg", SeasonStripDrawing.Draw(Invented.Southern(), "southern", shape, English));

    [Theory]
    [InlineData(DrawingShape.Wide)]
    [InlineData(DrawingShape.Narrow)]
    public void Draw_AnyValidStrip_IsWellFormedSafeAndInside(DrawingShape shape) => Gens.Strip.Sample(
        strip =>
        {
            var svg = SeasonStripDrawing.Draw(strip, "s", shape, CultureInfo.InvariantCulture);
            var root = SvgReader.Parse(svg);
            SvgReader.AssertSafe(root);
            SvgReader.AssertInside(root);
            Assert.Equal(strip.Jars.Count, root.Descendants().Count(element => element.Attribute("data-jar") is not null));
            Assert.Equal(strip.Dues.Count, root.OfClass("fd-due").Count());
        },
        iter: 300);

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    [InlineData("sv-SE")]
    public void Draw_AnyCulture_KeepsCoordinatesReadable(string culture)
    {
        var root = SvgReader.Parse(SeasonStripDrawing.Draw(Invented.Orchard(), "s", DrawingShape.Wide, CultureInfo.GetCultureInfo(culture)));
        SvgReader.AssertInside(root);
    }

    [Fact]
    public void Draw_SameStripTwice_IsTheSame() =>
        Assert.Equal(
            SeasonStripDrawing.Draw(Invented.Orchard(), "s", DrawingShape.Wide, English),
            SeasonStripDrawing.Draw(Invented.Orchard(), "s", DrawingShape.Wide, English));

    [Fact]
    public void Draw_JarsOfOneDay_StandAtDifferentPlaces()
    {
        var root = SvgReader.Parse(SeasonStripDrawing.Draw(Invented.Orchard(), "s", DrawingShape.Narrow, English));
        var whiskers = root.OfClass("fd-whisker").Where(line => (string)line.Attribute("x1")! == (string)line.Attribute("x2")!).Select(line => (string)line.Attribute("x1")!).ToList();
        Assert.Equal(Invented.Orchard().Jars.Count, whiskers.Count);
        Assert.Equal(whiskers.Count, whiskers.Distinct().Count());
    }

    [Fact]
    public void Draw_Narrow_HasNoTextBelowTwelve()
    {
        var root = SvgReader.Parse(SeasonStripDrawing.Draw(Invented.Orchard(), "s", DrawingShape.Narrow, English));
        var sizes = root.Descendants().SelectMany(element => element.Attributes("font-size")).Select(size => SvgReader.Number(size.Value)).ToList();
        Assert.NotEmpty(sizes);
        Assert.All(sizes, size => Assert.True(size >= 12));
    }

    [Fact]
    public void Draw_LevelAboveTheScale_ShowsItsValue()
    {
        var strip = Invented.Orchard() with { Jars = [Invented.Jar(1, "Hive 1", Invented.Day(2026, 8, 22), 108, 300)] };
        var root = SvgReader.Parse(SeasonStripDrawing.Draw(strip, "s", DrawingShape.Wide, English));
        Assert.Contains(root.OfClass("fd-jars").Single().Elements(), element => element.Name.LocalName == "text" && element.Value == "36");
    }

    [Fact]
    public void Draw_JarsUpToToday_StandLeftOfToday()
    {
        var root = SvgReader.Parse(SeasonStripDrawing.Draw(Invented.Orchard(), "s", DrawingShape.Narrow, English));
        var now = SvgReader.Number((string)root.OfClass("fd-now").Single().Attribute("x1")!);
        Assert.All(root.OfClass("fd-whisker"), line => Assert.True(SvgReader.Number((string)line.Attribute("x1")!) < now));
    }

    [Theory]
    [InlineData(DrawingShape.Narrow)]
    [InlineData(DrawingShape.Wide)]
    public void Draw_TwoVisitsThatCrowdBeforeToday_StandNearTheirDays(DrawingShape shape)
    {
        var orchard = Invented.Orchard();
        var jars = new[] { 8, 0 }.SelectMany(ago => Enumerable.Range(1, 8).Select(hive => Invented.Jar(hive, $"Hive {hive}", orchard.Today.AddDays(-ago), hive, 300))).ToArray();
        var root = SvgReader.Parse(SeasonStripDrawing.Draw(orchard with { Jars = jars }, "s", shape, English));
        var now = SvgReader.Number((string)root.OfClass("fd-now").Single().Attribute("x1")!);
        var places = root.OfClass("fd-whisker").Where(line => (string)line.Attribute("x1")! == (string)line.Attribute("x2")!).Select(line => SvgReader.Number((string)line.Attribute("x1")!)).Order().ToArray();
        Assert.Equal(16, places.Distinct().Count());
        // Two marks of 8 days and what they may be moved at most, where a visit alone has two to three weeks.
        Assert.InRange(places[0], now - (shape == DrawingShape.Narrow ? 24 : 42), now);
    }

    [Theory]
    [InlineData("")]
    [InlineData("1a")]
    [InlineData("a b")]
    [InlineData("a\"onload=")]
    public void Draw_BadId_NamesIt(string id)
    {
        var error = Assert.Throws<ArgumentException>(() => SeasonStripDrawing.Draw(Invented.Orchard(), id, DrawingShape.Wide, English));
        Assert.Contains($"'{id}'", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1)]
    public void Draw_LevelThatIsNone_NamesColonyAndDay(double level)
    {
        var jar = Invented.Jar(1, "Hive 9", Invented.Day(2026, 8, 22), 3, 300) with { Level = level };
        var error = Assert.Throws<ArgumentException>(() => SeasonStripDrawing.Draw(Invented.Orchard() with { Jars = [jar] }, "s", DrawingShape.Wide, English));
        Assert.Contains("Hive 9 on 2026-08-22", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_JarOutsideTheDays_SaysSo()
    {
        var strip = Invented.Orchard() with { Jars = [Invented.Jar(1, "Hive 9", Invented.Day(2027, 1, 1), 3, 300)] };
        var error = Assert.Throws<ArgumentException>(() => SeasonStripDrawing.Draw(strip, "s", DrawingShape.Wide, English));
        Assert.Contains("outside the strip's days 2026-01-01 to 2026-12-31", error.Message, StringComparison.Ordinal);
    }
}
