using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation;

public class SharpeningTests
{
    [Fact]
    public void Of_CountedJar_OffersOnlyAnotherJar()
    {
        Sharpening sharpening = Sharpening.Of(new(14, BeeCount.Counted(320)), 0.9);

        Assert.Null(sharpening.WidthIfCounted);
        Assert.True(sharpening.WidthWithAnotherJar < sharpening.WidthNow);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(14)]
    [InlineData(60)]
    public void Of_AssumedJar_NarrowsEitherWay(int mites)
    {
        Sharpening sharpening = Sharpening.Of(new(mites, BeeCount.Uncertain(BeeBasis.Assumed, 300, 0.25)), 0.9);

        Assert.True(sharpening.WidthIfCounted < sharpening.WidthNow);
        Assert.True(sharpening.WidthWithAnotherJar < sharpening.WidthNow);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(14)]
    [InlineData(80)]
    public void Of_AnotherCountedJar_IsWithinTwoPerCentOfTheFullSum(int mites)
    {
        // The full sum over the second count: Γ(s + k)/(Γ(s) k!) / 2^(s + k), with s = mites + ½.
        double shape = mites + 0.5;
        double sum = 0d;
        for (int count = 0; count < 600; count++)
        {
            double chance = Math.Exp(GammaFunctions.LogGamma(shape + count) - GammaFunctions.LogGamma(shape) - GammaFunctions.LogGamma(count + 1d) - ((shape + count) * Math.Log(2d)));
            sum += chance * LevelPosterior.FromJar(mites + count, BeeCount.Counted(600)).Interval(0.9).Width;
        }

        Assert.Equal(1d, Sharpening.Of(new(mites, BeeCount.Counted(300)), 0.9).WidthWithAnotherJar / sum, 0.02);
    }

    [Fact]
    public void Of_IfCounted_IsTheMeanOverTheBees()
    {
        // Simulated: draw the bees given the mites, count them, take the interval.
        const double Spread = 0.25;
        var random = new SeededGenerator(17);
        double sum = 0d;
        const int Draws = 4000;
        double unit = LevelPosterior.FromJar(9, BeeCount.Counted(1)).Interval(0.9).Width;
        for (int i = 0; i < Draws; i++)
            sum += unit / (300d * Math.Exp((Spread * random.NextNormal()) - (Spread * Spread / 2d)));

        Assert.Equal(1d, Sharpening.Of(new(9, BeeCount.Uncertain(BeeBasis.Assumed, 300, Spread)), 0.9).WidthIfCounted!.Value / (sum / Draws), 0.02);
    }
}
