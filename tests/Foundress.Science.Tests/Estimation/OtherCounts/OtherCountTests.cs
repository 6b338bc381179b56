using CsCheck;
using Foundress.Science.Estimation;

namespace Foundress.Science.Tests.Estimation.OtherCounts;

public class OtherCountTests
{
    private static readonly FallFactors Summer = new(30d, 300d, "published factors of one month");

    [Fact]
    public void PerDay_HalfTheBoardCounted_DoublesRateAndLimits()
    {
        RateInterval whole = new NaturalFall(20, 5d, 1d).PerDay(0.95);
        RateInterval half = new NaturalFall(20, 5d, 0.5).PerDay(0.95);

        Assert.Equal(2d * whole.Value, half.Value, 1e-12);
        Assert.Equal(2d * whole.Lower, half.Lower, 1e-12);
        Assert.Equal(2d * whole.Upper, half.Upper, 1e-12);
    }

    [Fact]
    public void Total_SoundFall_IsAsWideAsTheFactors() =>
        Gen.Select(Gen.Int[0, 900], Gen.Double[0.5, 30d], Gen.Double[0.1, 1d]).Sample(
            (mites, days, share) =>
            {
                NaturalFall fall = new(mites, days, share);
                RateInterval rate = fall.PerDay(0.95);
                MiteRange total = fall.Total(Summer, 0.95)!.Value;
                Assert.True(rate.Contains(rate.Value));
                Assert.Equal(30d * rate.Lower, total.Lowest, 1e-6);
                Assert.Equal(300d * rate.Upper, total.Highest, 1e-6);
                Assert.True(total.Highest >= 10d * total.Lowest);
            },
            iter: 200, threads: 2);

    [Theory]
    [InlineData(FallVoid.NoBrood)]
    [InlineData(FallVoid.Collapsing)]
    [InlineData(FallVoid.UnderControl)]
    [InlineData(FallVoid.Scavengers)]
    public void Total_VoidFall_IsNone(FallVoid reason)
    {
        NaturalFall fall = new(20, 5d, 1d, reason, reason);

        Assert.Equal([reason], fall.Voids);
        Assert.Null(fall.Total(Summer, 0.95));
    }

    // R 4.2.2: pgamma(days * share * line, mites + 0.5, lower.tail = FALSE).
    [Theory]
    [InlineData(24, 3d, 1d, 10d, 0.134864346525)]
    [InlineData(24, 1d, 1d, 10d, 0.999924546495)]
    [InlineData(0, 5d, 1d, 0.5, 0.025347318677)]
    [InlineData(40, 4d, 1d, 10d, 0.510542855430)]
    [InlineData(3, 3d, 0.33, 9d, 0.012809065752)]
    public void ChanceOver_Fall_IsThatOfR(int mites, double days, double share, double line, double expected) =>
        Assert.Equal(expected, new NaturalFall(mites, days, share).ChanceOver(line).Value, 1e-11);

    // R 4.2.2: pbeta(line, infested + 0.5, cells - infested + 0.5, lower.tail = FALSE).
    [Theory]
    [InlineData(12, 100, 0.05, 0.997472550524)]
    [InlineData(0, 50, 0.05, 0.023177540302)]
    [InlineData(50, 50, 0.25, 1d)]
    [InlineData(30, 100, 0.25, 0.874829590715)]
    public void ChanceOver_Brood_IsThatOfR(int infested, int cells, double line, double expected) =>
        Assert.Equal(expected, new OpenedBrood(BroodKind.Drone, cells, infested).ChanceOver(line).Value, 1e-11);

    [Theory]
    [InlineData(-1d)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void ChanceOver_BadLine_Refuses(double line)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new NaturalFall(3, 3d, 1d).ChanceOver(line));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OpenedBrood(BroodKind.Worker, 50, 3).ChanceOver(line));
    }

    [Fact]
    public void NaturalFall_BadInput_Refuses()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new NaturalFall(-1, 3d, 1d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NaturalFall(1, 0d, 1d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NaturalFall(1, double.NaN, 1d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NaturalFall(1, 3d, 33d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NaturalFall(1, 3d, 1d, (FallVoid)9));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FallFactors(0d, 30d, "source"));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FallFactors(30d, 20d, "source"));
        Assert.Throws<ArgumentException>(() => new FallFactors(20d, 40d, " "));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NaturalFall(1, 3d, 1d).PerDay(1d));
    }

    [Fact]
    public void OpenedBrood_MitesNotCounted_GivesTheShareOnly()
    {
        OpenedBrood brood = new(BroodKind.Drone, 100, 12);

        Assert.Null(brood.MitesPerCell(0.95));
        Assert.Equal(0.12, brood.ShareInfested(0.95).Value, 1e-12);
    }

    [Fact]
    public void OpenedBrood_AnyCounts_HoldsItsOwnRates() =>
        Gen.Select(Gen.Int[1, 500], Gen.Double[0d, 1d], Gen.Int[0, 300]).Sample(
            (cells, share, extra) =>
            {
                int infested = (int)(cells * share);
                OpenedBrood brood = new(BroodKind.Worker, cells, infested, infested == 0 ? 0 : infested + extra);
                RateInterval infestedShare = brood.ShareInfested(0.9);
                RateInterval perCell = brood.MitesPerCell(0.9)!.Value;
                Assert.True(infestedShare.Contains(infestedShare.Value) && infestedShare.Lower >= 0d && infestedShare.Upper <= 1d);
                Assert.True(perCell.Contains(perCell.Value) && perCell.Value >= infestedShare.Value);
            },
            iter: 200, threads: 2);

    [Fact]
    public void OpenedBrood_BadInput_Refuses()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new OpenedBrood(BroodKind.Worker, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OpenedBrood(BroodKind.Worker, 10, 11));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OpenedBrood(BroodKind.Worker, 10, 4, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OpenedBrood(BroodKind.Worker, 10, 0, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OpenedBrood((BroodKind)7, 10, 0));
    }
}
