using System.Globalization;
using CsCheck;
using Foundress.Book.Journal;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Tests.Judging;

public sealed class OtherCountReaderTests
{
    private static readonly DateOnly July = new(2026, 7, 14);

    // Weser-Ems regional guide, printed example: 20 mites in 5 days are 4 a day.
    [Fact]
    public void Read_TwentyInFiveDays_IsFourADay() => Assert.Equal(4, Read(Fall(20, 5)).Rate.Value, 12);

    // Hannover regional guide: in July above 10 a day. 180 in 15 days is 12 a day, well above; 75 is 5 a day, well below.
    [Theory]
    [InlineData(180, Standing.Above)]
    [InlineData(75, Standing.Below)]
    [InlineData(150, Standing.Unclear)]
    public void Read_HannoverInJuly_JudgesOnItsOwnScale(int mites, Standing standing)
    {
        var reading = Read(Fall(mites, 15), new PolicyRecord(FallLines: "hannover-fall"));
        Assert.Equal(standing, reading.Standing);
        Assert.Equal("mites/day", reading.Lines!.Unit);
    }

    [Fact]
    public void Read_NoLinesChosen_IsNotJudgedAndTellsThePublishedOnes()
    {
        var reading = Read(Fall(24, 3));
        Assert.Null(reading.Standing);
        Assert.Contains("not judged", reading.NotJudged, StringComparison.Ordinal);
        Assert.Contains(reading.Published, lines => lines.PolicyId == "hannover-fall" && lines.Deciding == 10);
        Assert.Contains("5 to 30", reading.Meaning, StringComparison.Ordinal);
    }

    // The lines of jars are on another scale: choosing them changes nothing here, and choosing these changes nothing there.
    [Fact]
    public void Read_LinesOfJars_AreNeverUsed()
    {
        Assert.Null(Read(Fall(24, 3), new PolicyRecord(LinePolicy: "own", OwnAct: 3)).Standing);
        var jar = new JarRecord(July, "alcohol-wash", [14], JarBees.Counted(320));
        var policy = JudgingPolicy.Of(new PolicyRecord(FallLines: "uk-fall-any-season"), TestBook.Knowledge);
        Assert.Equal(3, policy.On(null, jar.On)!.Deciding);
    }

    // July with brood: Martin 1998 and the UK handbook from 20, the German club rule up to 300.
    [Fact]
    public void Read_JulyWithBrood_GivesTheWholeRangeOfPublishedFactors()
    {
        var reading = Read(Fall(24, 3));
        Assert.Equal(20 * reading.Rate.Lower, reading.Total!.Value.Lowest, 9);
        Assert.Equal(300 * reading.Rate.Upper, reading.Total.Value.Highest, 9);
        Assert.Contains("No middle value", reading.TotalSaid, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_BroodlessInJuly_IsVoidAndGivesNoTotal()
    {
        var reading = Read(Fall(24, 3) with { Broodless = true }, new PolicyRecord(FallLines: "hannover-fall"));
        Assert.NotEmpty(reading.Voids);
        Assert.Null(reading.Standing);
        Assert.Null(reading.Total);
        Assert.Contains("cannot be told", reading.TotalSaid, StringComparison.Ordinal);
    }

    // Winter without brood: 250 to 500 (Martin 1998), 400 (UK handbook); the November line of Weser-Ems is meant for then.
    [Fact]
    public void Read_BroodlessInNovember_UsesWinterFactorsAndIsJudged()
    {
        var reading = Read(new MiteFallRecord(default, new DateOnly(2026, 11, 20), 60, 10), new PolicyRecord(FallLines: "weser-ems-fall"));
        Assert.Empty(reading.Voids);
        Assert.Equal(Standing.Above, reading.Standing);
        Assert.Equal(250 * reading.Rate.Lower, reading.Total!.Value.Lowest, 9);
        Assert.Equal(500 * reading.Rate.Upper, reading.Total.Value.Highest, 9);
    }

    [Fact]
    public void Read_SouthernJanuary_HasTheFactorsAndLinesOfNorthernJuly()
    {
        var south = new Apiary(default, "South", -36);
        var reading = Reader(new PolicyRecord(FallLines: "hannover-fall")).Read(new MiteFallRecord(default, new DateOnly(2026, 1, 14), 180, 15), south);
        Assert.Equal(Standing.Above, reading.Standing);
        Assert.Equal(20 * reading.Rate.Lower, reading.Total!.Value.Lowest, 9);
    }

    [Theory]
    [InlineData(true, null)]
    [InlineData(null, true)]
    public void Read_CollapsingOrUnderControl_SaysNothing(bool? collapsing, bool? control)
    {
        var reading = Read(Fall(900, 3) with { Collapsing = collapsing, UnderControl = control }, new PolicyRecord(FallLines: "hannover-fall"));
        Assert.Single(reading.Voids);
        Assert.Null(reading.Standing);
        Assert.Null(reading.OverLine);
        Assert.Null(reading.Total);
    }

    // More fell than was counted: "above" still holds, "below" does not.
    [Theory]
    [InlineData(900, Standing.Above)]
    [InlineData(3, null)]
    public void Read_Scavengers_CanOnlyBeAbove(int mites, Standing? standing) =>
        Assert.Equal(standing, Read(Fall(mites, 3) with { Scavengers = true }, new PolicyRecord(FallLines: "hannover-fall")).Standing);

    [Fact]
    public void Read_NoMites_NeverSaysNone()
    {
        var reading = Read(Fall(0, 3));
        Assert.Contains("not proof of none", reading.Meaning, StringComparison.Ordinal);
        Assert.True(reading.Rate.Upper > 1);
    }

    // UK handbook: below 5 per cent of drone cells light, above 25 severe. Interval: Clopper-Pearson by R 4.2.2, binom.test(12, 100).
    [Fact]
    public void Read_DroneBrood_HasTheExactIntervalAndItsOwnLines()
    {
        var reading = Reader(new PolicyRecord(DroneLines: "uk-drone-brood")).Read(new OpenedBroodRecord(default, July, BroodKind.Drone, 100, 12, 15), null);
        Assert.Equal(12, reading.Rate.Value, 9);
        Assert.Equal(6.357, reading.Rate.Lower, 3);
        Assert.Equal(20.024, reading.Rate.Upper, 3);
        Assert.Equal(Standing.Below, reading.Standing);
        Assert.Contains("perhaps over 5", reading.Meaning, StringComparison.Ordinal);
        Assert.Null(reading.Total);
    }

    [Fact]
    public void Read_WorkerBrood_IsNotJudgedByDroneLines() =>
        Assert.Null(Reader(new PolicyRecord(DroneLines: "uk-drone-brood")).Read(new OpenedBroodRecord(default, July, BroodKind.Worker, 100, 90), null).Standing);

    [Fact]
    public void Read_AnyFall_HasFiniteNumbersInOrder() =>
        Gen.Select(Gen.Int[0, 3000], Gen.Double[0.1, 60], Gen.Double[0.01, 1], Gen.Int[0, 364], Gen.Bool).Sample((mites, days, share, day, broodless) =>
        {
            var reading = Read(new MiteFallRecord(default, new DateOnly(2026, 1, 1).AddDays(day), mites, days, share, broodless ? true : null), new PolicyRecord(FallLines: "uk-fall-by-month"));
            Assert.True(reading.Rate.Lower <= reading.Rate.Value && reading.Rate.Value <= reading.Rate.Upper && double.IsFinite(reading.Rate.Upper));
            Assert.True(reading.Total is not { } total || (total.Lowest <= total.Highest && double.IsFinite(total.Highest)));
            Assert.DoesNotContain("NaN", reading.Meaning + reading.TotalSaid, StringComparison.Ordinal);
        }, iter: 300);

    [Fact]
    public void Strips_OtherCounts_StandBesideTheJarsAndLeaveThemAlone()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        var colony = book.Colony(apiary, "1", new DateOnly(2026, 3, 1));
        book.Jar(colony, July, 3);
        var fall = book.Write(Fall(24, 3) with { Colony = colony });
        book.Write(new OpenedBroodRecord(colony, July.AddDays(-9), BroodKind.Drone, 60, 4));
        var strips = new Foundress.Book.Seasons.SeasonStrips(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture);
        var strip = strips.Of(book.State.Apiaries[apiary], TestBook.Today);
        Assert.Single(strip.Jars);
        Assert.Equal([OtherKind.DroneBrood, OtherKind.NaturalFall], strip.Others.Select(mark => mark.Reading.Kind));

        book.Strike(fall);
        Assert.Empty(book.State.FallsOf(colony));
        Assert.Contains(fall, book.State.EntriesOf(colony));
    }

    private static MiteFallRecord Fall(int mites, double days) => new(default(ColonyId), July, mites, days);

    private static OtherCountReader Reader(PolicyRecord? settings = null) =>
        new(TestBook.Knowledge, JudgingPolicy.Of(settings ?? new PolicyRecord(), TestBook.Knowledge), CultureInfo.InvariantCulture);

    private static OtherReading Read(MiteFallRecord fall, PolicyRecord? settings = null) => Reader(settings).Read(fall, null);
}
