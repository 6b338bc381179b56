using Foundress.Science.Forecasting;

namespace Foundress.Science.Tests.Forecasting;

public class JarPredictionTests
{
    /// <summary>One course: the negative binomial distribution of size 5 and mean 10; its sums of C(y+4, 4) p⁵ (1-p)ʸ with p = 1/3.</summary>
    [Fact]
    public void AtMost_OneCourse_IsTheNegativeBinomial()
    {
        ForecastPriors sure = PlainForecast.Priors with { StrayShare = 0.0001 };
        JarPrediction prediction = JarPrediction.Of([10f / 300f], BeeCount.Counted(300), 1d, sure);

        Assert.Equal(0.4479612976793286, prediction.AtMost(8).Value, 1e-4);
        Assert.Equal([4, 9, 17], new[] { 0.1, 0.5, 0.9 }.Select(chance => prediction.Mites(Chance.Of(chance))));
        Assert.Equal(0d, prediction.AtMost(-1).Value);
    }

    [Fact]
    public void Mites_RisingChances_NeverFall()
    {
        JarPrediction prediction = JarPrediction.Of([0f, 0.001f, 0.02f, 0.5f], BeeCount.Counted(300), 0.9, PlainForecast.Priors);
        int before = 0;
        for (int i = 1; i < 1000; i++)
        {
            Chance chance = Chance.Of(i / 1000d);
            int mites = prediction.Mites(chance);
            Assert.True(mites >= before);
            Assert.True(prediction.AtMost(mites) >= chance && (mites == 0 || prediction.AtMost(mites - 1) < chance));
            Assert.InRange(prediction.Level(chance).Per100Bees * 3d, Math.Max(0d, mites - 0.5), mites + 0.5);
            before = mites;
        }
    }

    [Fact]
    public void Of_NoCourse_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => JarPrediction.Of([], BeeCount.Counted(300), 1d, PlainForecast.Priors));
}
