using Foundress.Science;
using Foundress.Science.Sampling;

namespace Foundress.Reference.Tests.Sampling;

public class PublishedDetectionTests
{
    // Textbook binomial: the fewest n with 1 - (1 - p)^n >= 0.95.
    [Theory]
    [InlineData(0.1, 2995)]
    [InlineData(0.3, 998)]
    [InlineData(0.5, 598)]
    [InlineData(1, 299)]
    [InlineData(2, 149)]
    [InlineData(3, 99)]
    public void BeesFor_NinetyFivePerCent_AreTheTextbookNumbers(double per100, int bees)
    {
        MiteLevel level = MiteLevel.Per100(per100);

        Assert.Equal(bees, JarDetection.BeesFor(level, Chance.Of(0.95)));
        Assert.True(JarDetection.ChanceOfNone(level, bees).Value <= 0.05);
        Assert.True(JarDetection.ChanceOfNone(level, bees - 1).Value > 0.05);
    }

    [Fact]
    public void ChanceOfNone_HundredBeesAtOnePerCent_IsThePrintedChance()
    {
        // American Bee Journal, April 2020, prints 36 %: 0.99^100 = 0.3660, cut off and not rounded.
        double chance = JarDetection.ChanceOfNone(MiteLevel.Per100(1), 100).Value;

        Assert.Equal(0.3660, chance, 5e-5);
        Assert.Equal(36, (int)(100 * chance));
    }
}
