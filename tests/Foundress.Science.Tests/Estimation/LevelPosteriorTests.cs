using CsCheck;
using Foundress.Science.Estimation;

namespace Foundress.Science.Tests.Estimation;

public class LevelPosteriorTests
{
    private static readonly Gen<BeeCount> Bees = Gen.OneOf(
        Gen.Int[30, 900].Select(BeeCount.Counted),
        Gen.Select(Gen.Double[30d, 900d], Gen.Double[0.01, 0.6]).Select((bees, spread) => BeeCount.Uncertain(BeeBasis.Assumed, bees, spread)));

    private static readonly Gen<JarCount> Jar = Gen.Select(Gen.Int[0, 80], Bees, Gen.Double[0.5, 1d]).Select((mites, bees, recovery) => new JarCount(mites, bees, recovery));

    [Fact]
    public void Quantile_AnyJars_IsUndoneByTheChanceOver() =>
        Gen.Select(Jar.Array[1, 3], Gen.Double[0.001, 0.999]).Sample((jars, p) =>
        {
            LevelPosterior posterior = LevelPosterior.FromJars(jars);
            return Math.Abs(posterior.ChanceOver(posterior.Quantile(p)).Value - (1d - p)) < 1e-9;
        }, iter: 60);

    [Fact]
    public void ChanceOver_AnyJars_FallsAsTheLineRises() =>
        Gen.Select(Jar.Array[1, 2], Gen.Double[0d, 30d], Gen.Double[0.01, 5d]).Sample((jars, line, more) =>
        {
            LevelPosterior posterior = LevelPosterior.FromJars(jars);
            return posterior.ChanceOver(MiteLevel.Per100(line)) >= posterior.ChanceOver(MiteLevel.Per100(line + more));
        }, iter: 60);

    [Fact]
    public void ChanceOver_LineOfZero_IsCertain() =>
        Jar.Array[1, 2].Sample(jars => LevelPosterior.FromJars(jars).ChanceOver(MiteLevel.Per100(0)).Value > 1d - 1e-12, iter: 40);

    [Fact]
    public void Interval_UncertainBees_IsWider() =>
        Gen.Select(Gen.Int[0, 60], Gen.Int[100, 500], Gen.Double[0.05, 0.5]).Sample((mites, bees, spread) =>
            Width(BeeCount.Uncertain(BeeBasis.Assumed, bees, spread), mites) > Width(BeeCount.Counted(bees), mites));

    [Fact]
    public void Interval_VanishingSpread_TendsToThatOfCountedBees() =>
        Gen.Select(Gen.Int[0, 60], Gen.Int[100, 500]).Sample((mites, bees) =>
            Math.Abs((Width(BeeCount.Uncertain(BeeBasis.Weighed, bees, 1e-5), mites) / Width(BeeCount.Counted(bees), mites)) - 1d) < 1e-6);

    [Fact]
    public void FromJars_CountedJars_AreThatOfOneJarWithAllBees()
    {
        LevelPosterior two = LevelPosterior.FromJars([(4, BeeCount.Counted(300)), (9, BeeCount.Counted(310))]);
        LevelPosterior one = LevelPosterior.FromJar(13, BeeCount.Counted(610));

        Assert.Equal(one.Mean, two.Mean);
        Assert.Equal(one.Quantile(0.9), two.Quantile(0.9));
    }

    [Fact]
    public void FromJars_OrderOfJars_DoesNotMatter()
    {
        JarCount[] jars = [new(4, BeeCount.Counted(300)), new(9, BeeCount.Uncertain(BeeBasis.Assumed, 300, 0.15)), new(0, BeeCount.Uncertain(BeeBasis.Weighed, 280, 0.1))];
        double there = LevelPosterior.FromJars(jars).Median.Per100Bees;
        double back = LevelPosterior.FromJars([.. jars.Reverse()]).Median.Per100Bees;

        Assert.Equal(there, back, 1e-10);
    }

    [Fact]
    public void Mean_UncertainBees_HasItsClosedForm()
    {
        // Bees given mites are lognormal with median m·exp(-s²/2), so E[1/bees] = exp(s²)/m.
        double mean = LevelPosterior.FromJar(7, BeeCount.Uncertain(BeeBasis.Assumed, 300, 0.3)).Mean.Per100Bees;
        Assert.Equal(100d * 7.5 / 300 * Math.Exp(0.09), mean, 1e-12);
    }

    [Fact]
    public void Interval_NoMites_IsNotMiteFree()
    {
        LevelInterval interval = LevelPosterior.FromJar(0, BeeCount.Counted(300)).Interval(0.95);

        Assert.Equal(IntervalMethod.Posterior, interval.Method);
        Assert.InRange(interval.Upper.Per100Bees, 0.5, 1.22);
    }

    [Theory]
    [InlineData(0d)]
    [InlineData(1d)]
    [InlineData(double.NaN)]
    public void Quantile_OutOfRange_IsRefused(double p) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LevelPosterior.FromJar(3, BeeCount.Counted(300)).Quantile(p));

    [Theory]
    [InlineData(0d)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void FromJar_RecoveryOutOfRange_IsRefused(double recovery) =>
        Assert.Equal("recovery", Assert.Throws<ArgumentOutOfRangeException>(() => LevelPosterior.FromJar(3, BeeCount.Counted(300), recovery)).ParamName);

    [Fact]
    public void FromJar_NegativeMites_IsRefused() =>
        Assert.Equal("mites", Assert.Throws<ArgumentOutOfRangeException>(() => LevelPosterior.FromJar(-1, BeeCount.Counted(300))).ParamName);

    [Fact]
    public void FromJar_UnsetBees_IsRefused() =>
        Assert.Equal("bees", Assert.Throws<ArgumentOutOfRangeException>(() => LevelPosterior.FromJar(1, default)).ParamName);

    [Fact]
    public void FromJars_NoJar_IsRefused() =>
        Assert.Throws<ArgumentException>(() => LevelPosterior.FromJars(Array.Empty<JarCount>()));

    private static double Width(BeeCount bees, int mites) => LevelPosterior.FromJar(mites, bees).Interval(0.9).Width;
}
