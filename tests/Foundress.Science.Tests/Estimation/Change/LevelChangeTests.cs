using CsCheck;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation.Change;

public class LevelChangeTests
{
    [Fact]
    public void OfColony_BadInput_Refuses()
    {
        JarCount[] jars = [new(3, BeeCount.Counted(300))];
        Assert.Throws<ArgumentException>(() => LevelChange.OfColony([], jars, 21d));
        Assert.Throws<ArgumentException>(() => LevelChange.OfColony(jars, [], 21d));
        Assert.Throws<ArgumentOutOfRangeException>(() => LevelChange.OfColony(jars, jars, 0d));
        Assert.Throws<ArgumentOutOfRangeException>(() => LevelChange.OfColony(jars, jars, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => LevelChange.OfColony(jars, jars, 21d).RatioQuantile(1d));
    }

    [Fact]
    public void OfColony_RoundsSwapped_InvertsTheRatio() =>
        Gen.Select(Gen.Int[0, 200], Gen.Int[0, 200], Gen.Int[50, 900], Gen.Int[50, 900], Gen.Double[0.02, 0.98]).Sample(
            (earlier, later, bees, otherBees, p) =>
            {
                JarCount[] first = [new(earlier, BeeCount.Counted(bees))];
                JarCount[] second = [new(later, BeeCount.Counted(otherBees))];
                double there = LevelChange.OfColony(first, second, 30d).RatioQuantile(p);
                double back = LevelChange.OfColony(second, first, 30d).RatioQuantile(1d - p);
                Assert.Equal(1d, there * back, 1e-7);
            },
            iter: 200, threads: 2);

    [Fact]
    public void OfColony_AssumedBees_WidenTheInterval()
    {
        ChangeInterval counted = LevelChange.OfColony([new(40, BeeCount.Counted(300))], [new(60, BeeCount.Counted(300))], 21d).RatioInterval(0.95);
        BeeCount cup = BeeCount.Uncertain(BeeBasis.Assumed, 300d, 0.25);
        ChangeInterval assumed = LevelChange.OfColony([new(40, cup)], [new(60, cup)], 21d).RatioInterval(0.95);

        Assert.True(Math.Log(assumed.Upper / assumed.Lower) > 1.2 * Math.Log(counted.Upper / counted.Lower));
    }

    /// <summary>The same posteriors drawn and divided: 200,000 draws put the quantiles within about 1 %.</summary>
    [Fact]
    public void OfColony_AssumedBees_MatchesDraws()
    {
        SeededGenerator generator = new(5);
        double[] draws = new double[200_000];
        for (int i = 0; i < draws.Length; i++)
        {
            // Given the mites, bees are lognormal with their median times exp(-½ s²).
            double earlier = generator.NextGamma(12.5) / (300d * Math.Exp((0.2 * generator.NextNormal()) - 0.02));
            double later = generator.NextGamma(7.5) / (350d * Math.Exp((0.3 * generator.NextNormal()) - 0.045));
            draws[i] = later / earlier;
        }

        Array.Sort(draws);
        LevelChange change = LevelChange.OfColony(
            [new(12, BeeCount.Uncertain(BeeBasis.Assumed, 300d, 0.2))], [new(7, BeeCount.Uncertain(BeeBasis.Assumed, 350d, 0.3))], 21d);
        foreach (double p in (ReadOnlySpan<double>)[0.05, 0.25, 0.5, 0.75, 0.95])
            Assert.Equal(draws[(int)(p * draws.Length)], change.RatioQuantile(p), 0.012 * draws[(int)(p * draws.Length)]);
    }

    [Fact]
    public void OfColony_SameLevelLater_GrowthIsTheLogRatioPerDay()
    {
        LevelChange change = LevelChange.OfColony([new(100, BeeCount.Counted(300))], [new(200, BeeCount.Counted(300))], 30d);

        // ln 2 / 30 = 0.0231, the doubling in a month.
        Assert.Equal(Math.Log(2d) / 30d, change.MedianGrowthPerDay, 0.0005);
        Assert.True(change.GrowthPerDayInterval(0.95).Contains(Math.Log(2d) / 30d));
        Assert.True(change.ChanceGrown.Value > 0.999);
    }

    [Fact]
    public void OfApiary_SameRoundTwice_IsCentredOnNoChange()
    {
        ApiaryPosterior posterior = ApiaryPosterior.FromJars(
            [.. new[] { 14, 3, 0, 9, 22 }.Select((mites, i) => new ColonyJars($"colony {i}", [new JarCount(mites, BeeCount.Counted(300))]))], 10);
        LevelChange change = LevelChange.OfApiary(posterior, posterior, 21d);

        Assert.Equal(1d, change.MedianRatio, 1e-4);
        Assert.Equal(0.5, change.ChanceGrown.Value, 1e-4);
        ChangeInterval interval = change.RatioInterval(0.9);
        Assert.Equal(1d, interval.Lower * interval.Upper, 1e-3);
    }

    /// <summary>One colony that is the whole apiary and fills its jars: the apiary's change is the colony's.</summary>
    [Fact]
    public void OfApiary_OneWellCountedColony_IsTheColonysChange()
    {
        JarCount[] earlier = [new(400, BeeCount.Counted(9000))];
        JarCount[] later = [new(900, BeeCount.Counted(9000))];
        ChangeInterval colony = LevelChange.OfColony(earlier, later, 21d).RatioInterval(0.95);
        ChangeInterval apiary = LevelChange.OfApiary(
            ApiaryPosterior.FromJars([new("Ash", earlier)], 0), ApiaryPosterior.FromJars([new("Ash", later)], 0), 21d).RatioInterval(0.95);

        Assert.Equal(colony.Lower, apiary.Lower, 0.01 * colony.Lower);
        Assert.Equal(colony.Upper, apiary.Upper, 0.01 * colony.Upper);
    }
}
