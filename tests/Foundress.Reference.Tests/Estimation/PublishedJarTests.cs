using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Reference.Tests.Estimation;

/// <summary>Worked jars from handbooks and articles, and arithmetic anyone can repeat.</summary>
public class PublishedJarTests
{
    [Fact]
    public void FromJar_HandbookExample_IsNotThePrintedResult()
    {
        // Dietemann et al. 2013, J Apic Res 52(1), 4.2.3.1.2.1: 43 mites on 310 bees, printed as 14.3 per 100. The printed
        // result is wrong for its inputs (43/310 = 13.87; 43/300 would be 14.33): the arithmetic is expected, not the print.
        double level = 100d * 43 / 310;
        LevelInterval interval = CountIntervals.ExactPoisson(43, 310, 0.95);

        Assert.Equal(13.87, level, 0.005);
        Assert.True(interval.Contains(MiteLevel.Per100(level)));

        // Jeffreys' posterior mean is (43 + ½)/310.
        Assert.Equal(14.032258, LevelPosterior.FromJar(43, BeeCount.Counted(310)).Mean.Per100Bees, 5e-7);
    }

    [Fact]
    public void FromJar_HandbookExampleWithRecovery_IsDividedByIt()
    {
        // 43/310 at the 92.9 % that powdered sugar gets off the bees (Macedo, Wu & Ellis 2002): 14.93 per 100.
        double expected = 100d * 43 / 310 / 0.929;
        Assert.Equal(14.93, expected, 0.005);
        Assert.Equal(expected * 43.5 / 43, LevelPosterior.FromJar(43, BeeCount.Counted(310), 0.929).Mean.Per100Bees, 1e-9);
    }

    [Theory]

    // SciPy 1.10.1: chi2.ppf and gamma.sf.
    [InlineData(14, 320, 2.39185, 7.34051)]
    public void ExactPoisson_FourteenIn320_HasTheLimitsOfSciPy(int mites, int bees, double lower, double upper)
    {
        LevelInterval interval = CountIntervals.ExactPoisson(mites, bees, 0.95);
        Assert.Equal(lower, interval.Lower.Per100Bees, 5e-6);
        Assert.Equal(upper, interval.Upper.Per100Bees, 5e-6);
    }

    [Fact]
    public void ChanceOver_FourteenIn320OverThree_IsThatOfSciPy()
    {
        // SciPy 1.10.1: gamma.sf(0.03 * 320, 14.5).
        Assert.Equal(0.91605, LevelPosterior.FromJar(14, BeeCount.Counted(320)).ChanceOver(MiteLevel.Per100(3)).Value, 5e-6);
    }

    // Exact and Wilson limits for k mites in 300 bees, textbook statistics printed to two decimals.
    [Theory]
    [InlineData(0, 0, 1.22, 0, 1.26)]
    [InlineData(3, 0.21, 2.89, 0.34, 2.90)]
    [InlineData(9, 1.38, 5.62, 1.59, 5.60)]
    [InlineData(15, 2.83, 8.11, 3.05, 8.08)]
    [InlineData(30, 6.85, 13.97, 7.09, 13.92)]
    public void Proportions_InThreeHundredBees_HaveTheTextbookLimits(int mites, double exactLower, double exactUpper, double wilsonLower, double wilsonUpper)
    {
        LevelInterval exact = CountIntervals.ClopperPearson(mites, 300, 0.95);
        LevelInterval wilson = CountIntervals.Wilson(mites, 300, 0.95);

        Assert.Equal(exactLower, exact.Lower.Per100Bees, 0.0051);
        Assert.Equal(exactUpper, exact.Upper.Per100Bees, 0.0051);
        Assert.Equal(wilsonLower, wilson.Lower.Per100Bees, 0.0051);
        Assert.Equal(wilsonUpper, wilson.Upper.Per100Bees, 0.0051);
    }
}
