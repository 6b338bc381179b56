using Foundress.Science.Estimation;
using Foundress.Science;

namespace Foundress.Reference.Tests.Estimation.Apiary;

/// <summary>
/// The contrasts between arms at day 21 that the trial's authors published: strip / strip + thymol 1.935 (standard error 0.685),
/// strip / concentrate 5.727 (95 % 2.23 to 14.72).
/// </summary>
public class TrialContrastTests
{
    [Theory]
    [InlineData("amitraz strip + thymol gel", 1.935, 0.967, 3.872)]
    [InlineData("amitraz emulsifiable concentrate", 5.727, 2.23, 14.72)]
    public void OfApiary_ArmsOfTheTrial_MatchesPublishedContrast(string other, double published, double lower, double upper)
    {
        ApiaryPosterior strip = ApiaryPosterior.FromJars(TrialData.Arm("amitraz strip", 21), 0);
        ApiaryPosterior rival = ApiaryPosterior.FromJars(TrialData.Arm(other, 21), 0);

        // A population of colonies stands for the finite groups: as many unsampled ones as make the groups themselves negligible.
        ApiaryPosterior manyStrip = ApiaryPosterior.FromJars(TrialData.Arm("amitraz strip", 21), 10_000);
        ApiaryPosterior manyRival = ApiaryPosterior.FromJars(TrialData.Arm(other, 21), 10_000);
        ChangeInterval interval = LevelChange.OfApiary(manyRival, manyStrip, 1d).RatioInterval(0.95);
        double median = LevelChange.OfApiary(rival, strip, 1d).MedianRatio;
        TestContext.Current.TestOutputHelper?.WriteLine($"{other}: {median:F3}, population {interval.Lower:F2} to {interval.Upper:F2}");

        Assert.InRange(median, lower, upper);
        Assert.True(interval.Contains(published), $"{published} lies outside {interval.Lower} to {interval.Upper}.");
        Assert.InRange(Math.Log(interval.Upper / interval.Lower), 0.6 * Math.Log(upper / lower), 1.6 * Math.Log(upper / lower));
    }

    [Theory]
    [InlineData("amitraz strip", 11.15)]
    [InlineData("amitraz strip + thymol gel", 11.05)]
    [InlineData("amitraz emulsifiable concentrate", 11.04)]
    public void FromJars_DayZeroArms_MeanIntervalHoldsTheArmTotal(string arm, double total)
    {
        LevelInterval interval = ApiaryPosterior.FromJars(TrialData.Arm(arm, 0), 0).MeanInterval(0.8);

        Assert.True(interval.Contains(MiteLevel.Per100(total)), $"{total} lies outside {interval.Lower} to {interval.Upper}.");
    }
}
