using System.Globalization;
using Foundress.Science;

namespace Foundress.Knowledge.Tests;

public sealed class FallFactorTests
{
    private static readonly KnowledgeBase Knowledge = KnowledgeBase.In(CultureInfo.InvariantCulture);

    // UK handbook: 30 from May to August, 100 in March, April, September and October, 400 from November to February.
    [Theory]
    [InlineData(7, false, 30)]
    [InlineData(10, false, 100)]
    [InlineData(12, false, 400)]
    [InlineData(12, true, 400)]
    public void Covers_UkHandbook_HasOneFactorForEachMonth(int month, bool broodless, double factor) =>
        Assert.Equal(factor, Assert.Single(Knowledge.FallFactors, one => one.Id.StartsWith("uk-", StringComparison.Ordinal) && one.Covers(month, Hemisphere.North, broodless)).Lowest);

    [Fact]
    public void Covers_South_IsSixMonthsApart()
    {
        foreach (var factor in Knowledge.FallFactors)
        {
            for (var month = 1; month <= 12; month++)
                Assert.Equal(factor.Covers(month, Hemisphere.North, false), factor.Covers(((month + 5) % 12) + 1, Hemisphere.South, false));
        }
    }

    // The literature disagrees about tenfold; a total must never rest on one source alone while brood is there.
    [Fact]
    public void FallFactors_EveryMonthWithBrood_HasAtLeastTwoThatDiffer()
    {
        for (var month = 1; month <= 12; month++)
        {
            var covering = Knowledge.FallFactors.Where(one => one.Covers(month, Hemisphere.North, broodless: false)).ToList();
            Assert.True(covering.Max(one => one.Highest) > covering.Min(one => one.Lowest), $"month {month}");
        }
    }

    [Fact]
    public void FallFactors_BroodlessSummer_HasNone() => Assert.DoesNotContain(Knowledge.FallFactors, one => one.Covers(7, Hemisphere.North, broodless: true));

    [Fact]
    public void Read_PriorWorthTwoJarsForTheSpread_IsRefused() => Assert.Contains(
        "more than 2 jars", DataFiles.RefusalOf("jars.json", tree => tree["calibration"]!["jarsForSpread"]!["value"] = 2).Message, StringComparison.Ordinal);

    [Fact]
    public void Read_FallFactorOfNought_IsRefused() => Assert.Contains(
        "above 0", DataFiles.RefusalOf("fall.json", tree => tree["factors"]![1]!["factor"]!["low"] = 0).Message, StringComparison.Ordinal);
}
