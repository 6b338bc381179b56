using CsCheck;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation.RepeatPasses;

public class RemovalTests
{
    private static readonly Gen<int[]> Counts = Gen.Int[0, 120].Array[2, 10];

    [Theory]
    [InlineData(RemovalRefusal.OnePass, 12)]
    [InlineData(RemovalRefusal.NoMites, 0, 0)]
    [InlineData(RemovalRefusal.NoMites, 0, 0, 0)]
    [InlineData(RemovalRefusal.NoDecline, 5, 5)]
    [InlineData(RemovalRefusal.NoDecline, 3, 9)]
    [InlineData(RemovalRefusal.NoDecline, 5, 7, 8)]
    [InlineData(RemovalRefusal.NoDecline, 4, 9, 4)]
    public void From_CountsThatSayNothing_IsRefusedWithTheReason(RemovalRefusal reason, params int[] mites)
    {
        Removal removal = Removal.From(new PassCounts(mites));

        Assert.Equal(reason, removal.Refusal);
        Assert.Null(removal.Estimate);
        Assert.Equal(mites.Sum(), removal.Counts.Summed);
    }

    [Fact]
    public void PassCounts_BadInput_Refuses()
    {
        Assert.Throws<ArgumentException>(() => new PassCounts());
        Assert.Throws<ArgumentException>(() => new PassCounts(new int[11]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PassCounts(4, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PassCounts(20_001));
    }

    [Fact]
    public void From_EverythingInTheFirstPass_LeavesNothing()
    {
        RemovalEstimate estimate = Removal.From(new PassCounts(14, 0)).Estimate!;

        Assert.Equal(14d, estimate.Mites);
        Assert.Equal(1d, estimate.RecoveryOfPass);
        Assert.Equal(0d, estimate.StandardError);
        RemovalInterval interval = estimate.Interval(0.95);
        Assert.Equal(14d, interval.Lower);
        Assert.InRange(interval.Upper!.Value, 14.0001, 16d);
    }

    [Fact]
    public void From_DecliningCounts_StandsAtTheTopOfTheLikelihood() =>
        Counts.Sample(
            mites =>
            {
                Removal removal = Removal.From(new PassCounts(mites));
                int decline = mites.Select((count, i) => (mites.Length - 1 - (2 * i)) * count).Sum();
                Assert.Equal(decline > 0, removal.Estimate is not null);
                Assert.NotEqual(removal.Estimate is null, removal.Refusal is null);
                if (removal.Estimate is not RemovalEstimate estimate)
                    return;

                Assert.True(estimate.Mites >= mites.Sum());
                Assert.InRange(estimate.RecoveryOfPass, 0d, 1d);
                Assert.InRange(estimate.RecoveryOfAll, 0d, 1d);
                Assert.True(double.IsFinite(estimate.StandardError));
                RemovalInterval interval = estimate.Interval(0.9);
                RemovalInterval wider = estimate.Interval(0.95);
                Assert.True(interval.Lower >= mites.Sum() && wider.Lower <= interval.Lower);
                Assert.True(wider.Upper is null || wider.Upper >= interval.Upper);
                if (mites.Length == 2)
                    return;
                Assert.True(interval.Contains(estimate.Mites));
                double top = LogLikelihood(mites, estimate.Mites);
                double step = 0.01 * estimate.Mites;
                Assert.True(LogLikelihood(mites, estimate.Mites + step) <= top + 1e-9);
                Assert.True(estimate.Mites - step < mites.Sum() || LogLikelihood(mites, estimate.Mites - step) <= top + 1e-9);

                // The limits lie 1.3528 (half of qchisq(0.9, 1) = 2.70554) below the top, unless the lower one meets the count.
                if (interval.Upper is double upper)
                    Assert.Equal(top - 1.352772, LogLikelihood(mites, upper), 1e-4);
                if (interval.Lower > mites.Sum())
                    Assert.Equal(top - 1.352772, LogLikelihood(mites, interval.Lower), 1e-4);
            },
            iter: 300, threads: 2);

    [Fact]
    public void Interval_ThreePassesSimulated_CoversAsOftenAsItSays()
    {
        const int Runs = 1500;
        const int Mites = 60;
        SeededGenerator generator = new(11);
        int held = 0;
        int estimated = 0;
        for (int run = 0; run < Runs; run++)
        {
            int left = Mites;
            int[] caught = new int[3];
            for (int pass = 0; pass < 3; pass++)
            {
                for (int mite = left; mite > 0; mite--)
                {
                    if (generator.NextDouble() < 0.6)
                        caught[pass]++;
                }

                left -= caught[pass];
            }

            if (Removal.From(new PassCounts(caught)).Estimate is not RemovalEstimate estimate)
                continue;
            estimated++;
            held += estimate.Interval(0.95).Contains(Mites) ? 1 : 0;
        }

        Assert.Equal(Runs, estimated);
        Assert.InRange((double)held / estimated, 0.92, 0.98);
    }

    [Fact]
    public void NextPass_HighRecovery_IsNotWorthIt()
    {
        NextPass next = NextPass.Of(Removal.From(new PassCounts(60, 3)).Estimate!, 0.95)!.Value;

        Assert.False(next.IsWorthIt(0.3, 2d));
        Assert.InRange(next.ExpectedMites + next.ExpectedLeft, 0.1578, 0.158);
    }

    [Fact]
    public void NextPass_LowRecovery_IsWorthIt()
    {
        NextPass next = NextPass.Of(Removal.From(new PassCounts(30, 20)).Estimate!, 0.95)!.Value;

        // 90 mites, a third in each pass: 40 left, 13.3 expected.
        Assert.Equal(40d / 3d, next.ExpectedMites, 1e-9);
        Assert.Equal(80d / 3d, next.ExpectedLeft, 1e-9);

        // 30 and 20 cannot rule out endless mites at 95 %; a third pass with 13 can.
        Assert.Null(next.Now.Upper);
        Assert.NotNull(next.After.Upper);
        Assert.True(next.IsWorthIt(0.3, 2d));
    }

    [Fact]
    public void NextPass_NarrowingTooSmallForTheKeeper_IsNotWorthIt()
    {
        NextPass next = NextPass.Of(Removal.From(new PassCounts(40, 20)).Estimate!, 0.95)!.Value;

        Assert.True(next.After.Width < next.Now.Width);
        Assert.True(next.IsWorthIt(0.01, 1d));
        Assert.False(next.IsWorthIt(0.01, 1e6));
        Assert.False(next.IsWorthIt(0.999, 1d));
    }

    [Fact]
    public void NextPass_AfterTheLastPass_IsNone() =>
        Assert.Null(NextPass.Of(Removal.From(new PassCounts(50, 30, 20, 10, 8, 6, 4, 2, 1, 1)).Estimate!, 0.95));

    // The likelihood written out mite by mite: c(i) of those left, each caught with the same chance.
    private static double LogLikelihood(int[] mites, double number)
    {
        double caught = 0d;
        double trials = 0d;
        for (int i = 0; i < mites.Length; i++)
        {
            trials += number - caught;
            caught += mites[i];
        }

        double chance = caught / trials;
        double sum = 0d;
        for (int j = 0; j < caught; j++)
            sum += Math.Log(number - j);
        double missed = trials - caught;
        return sum + (caught * Math.Log(chance)) + (missed > 0d ? missed * Math.Log(1d - chance) : 0d);
    }
}
