using System.Globalization;
using CsCheck;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Science.Estimation;

namespace Foundress.Book.Tests.Judging;

public sealed class PassesReaderTests
{
    private static readonly DateOnly August = new(2026, 8, 3);

    // Two passes in closed form, Seber & Le Cren 1967: N = c1² / (c1 - c2). 79, 28 is the worked example of Seber 2002 (122, standard
    // error 8.8); 72, 56 that of Cowx 1983 (324, 178.19).
    [Theory]
    [InlineData(18, 2, 20.25, 0.629)]
    [InlineData(79, 28, 122.373, 8.8)]
    [InlineData(72, 56, 324, 178.19)]
    public void Read_TwoPasses_GivesThePublishedEstimate(int first, int second, double mites, double error)
    {
        var passes = Read(first, second).Passes!;
        Assert.Equal(mites, passes.Removal.Estimate!.Mites, 3);
        Assert.Equal(error, passes.Removal.Estimate.StandardError, 0.05);
        Assert.Equal(mites / 3, passes.PerHundred!.Value, 3);
        Assert.Contains(((int)Math.Round(mites)).ToString(CultureInfo.InvariantCulture), passes.Finding, StringComparison.Ordinal);
    }

    // Carle & Strub 1978, three passes of 38, 26, 12: their weighted estimate is 91; maximum likelihood lies close by.
    [Fact]
    public void Read_ThreePasses_LiesBesideThePublishedEstimate()
    {
        var passes = Read(38, 26, 12).Passes!;
        Assert.Equal(91, passes.Removal.Estimate!.Mites, 3d);
        Assert.StartsWith("Three passes found 76 mites.", passes.Finding, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5, 6)]
    [InlineData(5, 5)]
    public void Read_CountsThatDoNotFall_RefuseWithTheCounts(int first, int second)
    {
        var passes = Read(first, second).Passes!;
        Assert.Equal(RemovalRefusal.NoDecline, passes.Removal.Refusal);
        Assert.Null(passes.PerHundred);
        Assert.Contains($"({first}, then {second})", passes.Finding, StringComparison.Ordinal);
        Assert.Contains("no number is given", passes.Finding, StringComparison.Ordinal);
        Assert.NotNull(passes.Advice);
    }

    [Fact]
    public void Read_NoMitesInAnyPass_SaysNothingOfTheShare()
    {
        var passes = Read(0, 0).Passes!;
        Assert.Equal(RemovalRefusal.NoMites, passes.Removal.Refusal);
        Assert.Null(passes.Advice);
    }

    [Fact]
    public void Read_SinglePass_HasNoPasses() => Assert.Null(Read(18).Passes);

    [Fact]
    public void Read_SteepDecline_AdvisesAgainstAnotherPass()
    {
        var passes = Read(18, 2).Passes!;
        Assert.False(passes.AnotherIsWorthIt);
        Assert.Contains("not worth it", passes.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SlowDecline_AdvisesAnotherPassForAnUpperLimit()
    {
        var passes = Read(20, 14, 11).Passes!;
        Assert.Null(passes.Interval!.Value.Upper);
        Assert.True(passes.AnotherIsWorthIt);
        Assert.Contains("at least", passes.Finding, StringComparison.Ordinal);
    }

    // Corrections are shown, never mixed in: what is judged is the summed count, however it was split.
    [Fact]
    public void Read_AnySplitOfOneCount_JudgesTheSame() =>
        Gen.Int[0, 40].Array[1, 6].Sample(counts =>
        {
            var (split, summed) = (Read(counts), Read(counts.Sum()));
            Assert.Equal(summed.Level, split.Level);
            Assert.Equal(summed.Interval, split.Interval);
            Assert.Equal(summed.OverLine, split.OverLine);
            Assert.All(split.Working, step => Assert.DoesNotContain("NaN", step.How, StringComparison.Ordinal));
        }, iter: 200);

    [Fact]
    public void Read_Corrected_DividesByTheReportedShare()
    {
        // 43 mites on 310 bees at 92.9 per cent (Macedo, Wu & Ellis 2002): 13.871 / 0.929 = 14.93.
        var reading = Reader.Read(new JarRecord(August, "sugar-shake", [43], JarBees.Counted(310)), (Apiary?)null);
        var corrected = Assert.Single(reading.Corrected, level => level.Recovery.Share.Value == 92.9);
        Assert.Equal(14.93, corrected.Level.Per100Bees, 2);
        Assert.Equal(13.871, reading.Level.Per100Bees, 3);
        Assert.Equal(reading.Interval.Upper.Per100Bees / 0.929, corrected.Interval.Upper.Per100Bees, 9);
    }

    private static JarReader Reader => new(TestBook.Knowledge, JudgingPolicy.Of(BookState.Empty, TestBook.Knowledge), CultureInfo.InvariantCulture);

    private static JarReading Read(params int[] passes) => Reader.Read(new JarRecord(August, "alcohol-wash", passes, JarBees.Counted(300)), (Apiary?)null);
}
