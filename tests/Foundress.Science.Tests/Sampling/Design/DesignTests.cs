using CsCheck;
using Foundress.Science.Estimation;
using Foundress.Science.Sampling;

namespace Foundress.Science.Tests.Sampling.Design;

public class DesignTests
{
    private static readonly DesignQuestion Question = new(40, 1, 300, MiteLevel.Per100(3), MiteLevel.Per100(1.5), MiteLevel.Per100(6), 1d, 5);

    [Fact]
    public void Of_FortyColonies_ShowsFourSizesAndAll()
    {
        IReadOnlyList<DesignRow> rows = DesignTable.Of(Question);

        Assert.Equal([3, 5, 8, 12, 40], rows.Select(row => row.Plan.Sample.Take));
        for (int i = 1; i < rows.Count; i++)
        {
            Assert.True(rows[i].RelativeError < rows[i - 1].RelativeError);
            Assert.True(rows[i].FindsOne > rows[i - 1].FindsOne);
            Assert.True(rows[i].ActsInVain < rows[i - 1].ActsInVain);
            Assert.True(rows[i].WaitsTooLong < rows[i - 1].WaitsTooLong);
        }

        Assert.Equal(1d, rows[^1].FindsOne.Value);
        Assert.True(rows[^1].ActsInVain.Value < 1e-6);
    }

    [Fact]
    public void Of_FiveColonies_ShowsThreeAndAll() =>
        Assert.Equal(
            [3, 5],
            DesignTable.Of(new DesignQuestion(5, 1, 300, MiteLevel.Per100(3), MiteLevel.Per100(1), MiteLevel.Per100(6), 1d, 1)).Select(row => row.Plan.Sample.Take));

    [Fact]
    public void Splits_StrongSpread_FavourColoniesOverJars()
    {
        IReadOnlyList<JarSplit> splits = PlanPrecision.Splits(12, 40, 300, MiteLevel.Per100(3), 0.7);

        Assert.Equal([1, 2, 3, 4, 6, 12], splits.Select(split => split.Plan.Sample.Take));
        Assert.All(splits, split => Assert.Equal(12, split.Plan.Sample.Take * split.Plan.JarsPerColony));
        for (int i = 1; i < splits.Count; i++)
            Assert.True(splits[i].RelativeError < splits[i - 1].RelativeError);
    }

    [Fact]
    public void Splits_ColoniesAllAlike_DoNotMatter()
    {
        IReadOnlyList<JarSplit> splits = PlanPrecision.Splits(12, 40, 300, MiteLevel.Per100(3), double.PositiveInfinity);

        // 12 jars of 9 mites: 1 / sqrt(108).
        Assert.All(splits, split => Assert.Equal(1d / Math.Sqrt(108d), split.RelativeError, 1e-12));
    }

    [Fact]
    public void ColoniesFor_APrecision_IsTheFewestThatReachIt() =>
        Gen.Select(Gen.Int[1, 200], Gen.Double[0.2, 10d], Gen.Double[0.3, 8d], Gen.Double[0.05, 1d]).Sample(
            (colonies, per100, shape, wanted) =>
            {
                MiteLevel level = MiteLevel.Per100(per100);
                SampleSize? take = PlanPrecision.ColoniesFor(wanted, colonies, 1, 300, level, shape);
                double Error(int c) => PlanPrecision.RelativeError(new(new(c, colonies), 1, 300), level, shape);
                if (take is not SampleSize size)
                {
                    Assert.True(Error(colonies) > wanted);
                    return;
                }

                Assert.True(Error(size.Take) <= wanted);
                Assert.True(size.Take == 1 || Error(size.Take - 1) > wanted);
            },
            iter: 300, threads: 2);

    [Fact]
    public void ColoniesFor_AChanceOfDetection_IsTheFewestThatReachIt() =>
        Gen.Select(Gen.Int[1, 120], Gen.Int[1, 120], Gen.Double[0.1, 0.995], Gen.Double[0.3, 1d]).Sample(
            (colonies, some, chance, sensitivity) =>
            {
                int over = Math.Min(colonies, some);
                SampleSize? take = ColonyDetection.ColoniesFor(colonies, over, Chance.Of(chance), sensitivity);
                double Found(int c) => ColonyDetection.ChanceOfSome(new(c, colonies), over, sensitivity).Value;
                if (take is not SampleSize size)
                {
                    Assert.True(Found(colonies) < chance);
                    return;
                }

                Assert.True(Found(size.Take) >= chance - 1e-11);
                Assert.True(Found(size.Take - 1) < chance);
            },
            iter: 300, threads: 2);

    /// <summary>The closed tail against the sum it stands for: colony by colony, added up by convolution.</summary>
    [Theory]
    [InlineData(3, 1, 2.5, 0.6)]
    [InlineData(5, 2, 4d, 1.7)]
    public void ChanceJudgedOver_LargeApiary_IsTheSumOverColonies(int take, int jars, double per100, double shape)
    {
        const int Most = 800;
        double[] one = new double[Most];
        for (int mites = 0; mites < Most; mites++)
            one[mites] = Math.Exp(ClumpedCounts.LogMass(mites, jars * 3d * per100, shape));
        double[] sum = [1d, .. new double[Most - 1]];
        for (int colony = 0; colony < take; colony++)
        {
            double[] next = new double[Most];
            for (int a = 0; a < Most; a++)
            {
                for (int b = 0; b < Most - a; b++)
                    next[a + b] += sum[a] * one[b];
            }

            sum = next;
        }

        // At 3 per 100, jars of 300 allow 9 mites each.
        double notOver = sum.Take((9 * take * jars) + 1).Sum();
        SamplingPlan plan = new(new(take, int.MaxValue), jars, 300);
        Assert.Equal(1d - notOver, PlanDecision.ChanceJudgedOver(plan, MiteLevel.Per100(per100), shape, MiteLevel.Per100(3)).Value, 1e-7);
    }

    [Fact]
    public void ChanceOfError_EitherSideOfTheLine_IsTheWrongVerdict()
    {
        SamplingPlan plan = new(new(8, 40), 1, 300);
        MiteLevel line = MiteLevel.Per100(3);
        MiteLevel high = MiteLevel.Per100(5);

        Assert.Equal(1d - PlanDecision.ChanceJudgedOver(plan, high, 1d, line).Value, PlanDecision.ChanceOfError(plan, high, 1d, line).Value, 1e-15);
        Assert.Equal(PlanDecision.ChanceJudgedOver(plan, line, 1d, line), PlanDecision.ChanceOfError(plan, line, 1d, line));
        Assert.Equal(0d, PlanDecision.ChanceJudgedOver(plan, MiteLevel.Per100(0), 1d, line).Value);
    }

    [Fact]
    public void Design_BadInput_Refuses()
    {
        MiteLevel three = MiteLevel.Per100(3);
        SamplingPlan plan = new(new(3, 10), 1, 300);
        Assert.Throws<ArgumentOutOfRangeException>(() => new SamplingPlan(new(0, 10), 1, 300));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SamplingPlan(new(3, 10), 0, 300));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SamplingPlan(new(3, 10), 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => PlanPrecision.RelativeError(plan, three, 0d));
        Assert.Throws<ArgumentOutOfRangeException>(() => PlanPrecision.RelativeError(plan, MiteLevel.Per100(0), 1d));
        Assert.Throws<ArgumentOutOfRangeException>(() => PlanPrecision.ColoniesFor(0d, 10, 1, 300, three, 1d));
        Assert.Throws<ArgumentOutOfRangeException>(() => PlanPrecision.Splits(0, 10, 300, three, 1d));
        Assert.Throws<ArgumentOutOfRangeException>(() => PlanDecision.ChanceJudgedOver(plan, three, double.NaN, three));
        Assert.Throws<ArgumentOutOfRangeException>(() => ColonyDetection.ChanceOfSome(new(3, 10), 11));
        Assert.Throws<ArgumentOutOfRangeException>(() => ColonyDetection.ChanceOfSome(new(3, 10), 2, 0d));
        Assert.Throws<ArgumentOutOfRangeException>(() => ColonyDetection.ColoniesFor(10, 0, Chance.Of(0.9)));
        Assert.Throws<ArgumentOutOfRangeException>(() => DesignTable.Of(Question, [0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DesignQuestion(10, 1, 300, three, MiteLevel.Per100(4), MiteLevel.Per100(6), 1d, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DesignQuestion(10, 1, 300, three, three, three, 1d, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DesignQuestion(10, 1, 300, three, three, MiteLevel.Per100(6), 1d, 11));
    }
}
