using CsCheck;
using Foundress.Science.Estimation;
using Foundress.Science.Verifying;

namespace Foundress.Science.Tests.Verifying;

public class EfficacyOfTests
{
    private static readonly JarPair[] Eight =
        [Pair(14, 0), Pair(22, 2), Pair(7, 1), Pair(29, 1), Pair(11, 2), Pair(1, 0), Pair(39, 5), Pair(6, 2)];

    [Fact]
    public void Colony_NoMiteBefore_Refuses()
    {
        Assert.Equal(EfficacyRefusal.NoMitesBefore, EfficacyOf.Colony(Pair(0, 0)).Refusal);
        Assert.Null(EfficacyOf.Colony(Pair(0, 5)).Efficacy);
        Assert.Equal(EfficacyRefusal.NoMitesBefore, EfficacyOf.Group([Pair(0, 0), Pair(0, 1)]).Refusal);
        Assert.Equal(EfficacyRefusal.NoPairs, EfficacyOf.Group([]).Refusal);
    }

    [Fact]
    public void AgainstControls_ControlsWithoutMites_Refuse()
    {
        Assert.Equal(EfficacyRefusal.NoControlPairs, EfficacyOf.AgainstControls(Eight, []).Refusal);
        Assert.Equal(EfficacyRefusal.NoMitesInControlsBefore, EfficacyOf.AgainstControls(Eight, [Pair(0, 4)]).Refusal);
        Assert.Equal(EfficacyRefusal.NoMitesInControlsAfter, EfficacyOf.AgainstControls(Eight, [Pair(4, 0)]).Refusal);
    }

    /// <summary>One colony among colonies that are all alike, with as many bees before as after, is the closed form by the F distribution.</summary>
    [Theory]
    [InlineData(14, 0)]
    [InlineData(14, 3)]
    [InlineData(60, 2)]
    [InlineData(5, 9)]
    public void Group_OneColonyAllAlike_IsTheClosedForm(int before, int after)
    {
        EfficacyPosterior closed = EfficacyOf.Colony(Pair(before, after)).Efficacy!;
        EfficacyPosterior grid = EfficacyOf.Group([Pair(before, after)], EfficacyPrior.Alike).Efficacy!;

        foreach (double p in (double[])[0.05, 0.25, 0.5, 0.75, 0.95])
        {
            double left = 1 - closed.Quantile(p);
            Assert.Equal(left, 1 - grid.Quantile(p), 0.004 * left);
        }
    }

    [Fact]
    public void Group_SpreadBetweenColonies_WidensTheInterval()
    {
        EfficacyInterval alike = EfficacyOf.Group(Eight, EfficacyPrior.Alike).Efficacy!.Interval(0.9);
        EfficacyInterval spread = EfficacyOf.Group(Eight).Efficacy!.Interval(0.9);

        Assert.True(spread.Lower < alike.Lower && spread.Upper > alike.Upper);
    }

    [Fact]
    public void Group_UncertainBees_WidenTheInterval()
    {
        JarPair[] assumed = [.. Eight.Select(pair => new JarPair([Assumed(pair.MitesBefore)], [Assumed(pair.MitesAfter)]))];
        EfficacyInterval counted = EfficacyOf.Group(Eight, EfficacyPrior.Alike).Efficacy!.Interval(0.9);
        EfficacyInterval uncertain = EfficacyOf.Group(assumed, EfficacyPrior.Alike).Efficacy!.Interval(0.9);

        Assert.True(uncertain.Upper - uncertain.Lower > counted.Upper - counted.Lower);
        Assert.Equal(EfficacyOf.Group(Eight, EfficacyPrior.Alike).Efficacy!.Median, EfficacyOf.Group(assumed, EfficacyPrior.Alike).Efficacy!.Median, 0.01);
    }

    /// <summary>Half the bees in the jar after, and half the mites, say the same of the level.</summary>
    [Fact]
    public void Group_FewerBeesAfter_CountPerBee()
    {
        JarPair[] half = [.. Enumerable.Repeat(new JarPair([Jar(40)], [new JarCount(2, BeeCount.Counted(150))]), 8)];
        JarPair[] whole = [.. Enumerable.Repeat(new JarPair([Jar(40)], [Jar(4)]), 8)];

        Assert.Equal(EfficacyOf.Group(whole).Efficacy!.Median, EfficacyOf.Group(half).Efficacy!.Median, 0.01);
    }

    [Fact]
    public void AgainstControls_ControlsThatDoubled_HalveWhatIsLeft()
    {
        JarPair[] controls = [.. Enumerable.Repeat(Pair(200, 400), 12)];
        double plain = 1 - EfficacyOf.Group(Eight).Efficacy!.Median;

        Assert.Equal(plain / 2, 1 - EfficacyOf.AgainstControls(Eight, controls).Efficacy!.Median, 0.05 * plain);
        Assert.Equal(plain / 2, 1 - EfficacyOf.AgainstForecast(Eight, 2, 0).Efficacy!.Median, 0.001 * plain);
    }

    [Fact]
    public void AgainstForecast_WiderForecast_WidensTheInterval()
    {
        EfficacyInterval sure = EfficacyOf.AgainstForecast(Eight, 1.5, 0).Efficacy!.Interval(0.9);
        EfficacyInterval unsure = EfficacyOf.AgainstForecast(Eight, 1.5, 0.5).Efficacy!.Interval(0.9);

        Assert.True(unsure.Lower < sure.Lower && unsure.Upper > sure.Upper);
        Assert.Throws<ArgumentOutOfRangeException>(() => EfficacyOf.AgainstForecast(Eight, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => EfficacyOf.AgainstForecast(Eight, 1, -1));
    }

    [Fact]
    public void Quantile_AnyCounts_RisesAndMatchesTheChance() =>
        Gen.Select(Gen.Int[1, 80], Gen.Int[0, 80], Gen.Int[1, 12]).Sample(
            (before, after, colonies) =>
            {
                EfficacyPosterior efficacy = EfficacyOf.Group([.. Enumerable.Repeat(Pair(before, after), colonies)]).Efficacy!;
                double last = double.NegativeInfinity;
                foreach (double p in (double[])[0.01, 0.1, 0.5, 0.9, 0.99])
                {
                    double share = efficacy.Quantile(p);
                    Assert.True(double.IsFinite(share) && share > last && share < 1, $"{p}: {share}");
                    Assert.Equal(1 - p, efficacy.ChanceAtLeast(share).Value, 1e-6);
                    last = share;
                }
            },
            iter: 60);

    [Fact]
    public void Quantile_OutOfRange_Throws()
    {
        EfficacyPosterior efficacy = EfficacyOf.Group(Eight).Efficacy!;

        Assert.Throws<ArgumentOutOfRangeException>(() => efficacy.Quantile(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => efficacy.Interval(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => efficacy.ChanceAtLeast(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => EfficacyOf.Group(Eight, new EfficacyPrior(4)));
        Assert.Throws<ArgumentException>(() => new JarPair([], [Jar(3)]));
        Assert.Throws<ArgumentException>(() => new JarPair([Jar(3)], []));
    }

    internal static JarPair Pair(int before, int after) => new([Jar(before)], [Jar(after)]);

    private static JarCount Jar(int mites) => new(mites, BeeCount.Counted(300));

    private static JarCount Assumed(int mites) => new(mites, BeeCount.Uncertain(BeeBasis.Assumed, 300, 0.3));
}
