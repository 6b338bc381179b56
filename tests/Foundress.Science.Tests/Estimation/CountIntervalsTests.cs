using CsCheck;
using Foundress.Science.Estimation;

namespace Foundress.Science.Tests.Estimation;

public class CountIntervalsTests
{
    private static readonly Gen<(int Mites, int Bees, double Confidence)> Jar =
        Gen.Select(Gen.Int[0, 200], Gen.Int[200, 1200], Gen.Double[0.5, 0.999]);

    [Fact]
    public void EveryMethod_AnyJar_HoldsTheCountAndStartsAtZeroForNone() =>
        Jar.Sample(jar =>
        {
            MiteLevel seen = MiteLevel.FromPerBee((double)jar.Mites / jar.Bees);
            return All(jar.Mites, jar.Bees, jar.Confidence).All(interval =>
                interval.Contains(seen) && interval.Width > 0d && (jar.Mites > 0 || interval.Lower.Per100Bees == 0d));
        });

    [Fact]
    public void EveryMethod_MoreConfidence_IsWider() =>
        Jar.Sample(jar => All(jar.Mites, jar.Bees, jar.Confidence)
            .Zip(All(jar.Mites, jar.Bees, jar.Confidence + ((1d - jar.Confidence) / 2d)))
            .All(pair => pair.Second.Upper > pair.First.Upper && pair.Second.Lower <= pair.First.Lower));

    [Fact]
    public void ExactPoisson_SameCountOnTwiceTheBees_IsHalf() =>
        Jar.Sample(jar =>
        {
            LevelInterval one = CountIntervals.ExactPoisson(jar.Mites, jar.Bees, jar.Confidence);
            LevelInterval two = CountIntervals.ExactPoisson(jar.Mites, jar.Bees * 2, jar.Confidence);
            return Math.Abs(one.Upper.Per100Bees - (2d * two.Upper.Per100Bees)) < 1e-12 * one.Upper.Per100Bees;
        });

    [Fact]
    public void ExactPoisson_NoMites_HasTheClosedFormUpperLimit() =>
        // No mites: the upper limit solves exp(-n u) = α/2.
        Gen.Select(Gen.Int[1, 2000], Gen.Double[0.5, 0.999]).Sample((bees, confidence) =>
            Math.Abs((-Math.Log((1d - confidence) / 2d) * 100d / bees / CountIntervals.ExactPoisson(0, bees, confidence).Upper.Per100Bees) - 1d) < 1e-12);

    [Fact]
    public void ExactPoisson_MoreMitesThanBees_IsAllowed() =>
        Assert.True(CountIntervals.ExactPoisson(150, 100, 0.95).Upper > MiteLevel.Per100(150));

    [Fact]
    public void Proportions_EveryBeeWithAMite_EndAtOneHundred()
    {
        Assert.Equal(MiteLevel.Per100(100), CountIntervals.Wilson(30, 30, 0.95).Upper);
        Assert.Equal(MiteLevel.Per100(100), CountIntervals.ClopperPearson(30, 30, 0.95).Upper);
    }

    [Fact]
    public void Proportions_MoreMitesThanBees_PointToThePoissonInterval()
    {
        Assert.Contains("exact Poisson", Assert.Throws<ArgumentOutOfRangeException>(() => CountIntervals.Wilson(31, 30, 0.95)).Message, StringComparison.Ordinal);
        Assert.Contains("exact Poisson", Assert.Throws<ArgumentOutOfRangeException>(() => CountIntervals.ClopperPearson(31, 30, 0.95)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1, 300, 0.95, "mites")]
    [InlineData(3, 0, 0.95, "bees")]
    [InlineData(3, -5, 0.95, "bees")]
    [InlineData(3, 300, 0d, "confidence")]
    [InlineData(3, 300, 1d, "confidence")]
    [InlineData(3, 300, double.NaN, "confidence")]
    public void ExactPoisson_BadInput_NamesTheField(int mites, int bees, double confidence, string field) =>
        Assert.Equal(field, Assert.Throws<ArgumentOutOfRangeException>(() => CountIntervals.ExactPoisson(mites, bees, confidence)).ParamName);

    private static LevelInterval[] All(int mites, int bees, double confidence) =>
    [
        CountIntervals.ExactPoisson(mites, bees, confidence),
        CountIntervals.Wilson(mites, bees, confidence),
        CountIntervals.ClopperPearson(mites, bees, confidence),
    ];
}
