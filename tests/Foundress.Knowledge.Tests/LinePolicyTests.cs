using System.Globalization;
using Foundress.Science;
using Foundress.Science.Judging;

namespace Foundress.Knowledge.Tests;

public sealed class LinePolicyTests
{
    private static readonly KnowledgeBase Knowledge = KnowledgeBase.In(CultureInfo.InvariantCulture);

    /// <summary>Classes as printed by the regional guides: Hannover (July, 10 and 5 a day), Osnabrück (July, August, September per 50 g; fall), Weser-Ems (fall).</summary>
    [Theory]
    [InlineData("hannover-fall", 7, null, 12, LineBand.Above)]
    [InlineData("hannover-fall", 7, "young-colony", 7, LineBand.Above)]
    [InlineData("hannover-fall", 7, null, 7, LineBand.Below)]
    [InlineData("hannover-fall", 7, "swarm", 12, LineBand.Above)]
    [InlineData("osnabrueck-sugar-50-g", 7, null, 12, LineBand.Between)]
    [InlineData("osnabrueck-sugar-50-g", 8, null, 12, LineBand.Between)]
    [InlineData("osnabrueck-sugar-50-g", 9, null, 12, LineBand.Below)]
    [InlineData("osnabrueck-sugar-50-g", 9, null, 26, LineBand.Above)]
    [InlineData("osnabrueck-fall", 10, null, 1, LineBand.Below)]
    [InlineData("osnabrueck-fall", 7, null, 11, LineBand.Above)]
    [InlineData("weser-ems-fall", 7, null, 7, LineBand.Between)]
    [InlineData("weser-ems-fall", 11, null, 2, LineBand.Above)]
    public void For_PublishedClassTable_GivesThePrintedClass(string policy, int month, string? colonyClass, double level, LineBand expected) =>
        Assert.Equal(expected, Knowledge.LinePolicies[policy].For(SeasonPhase.Decrease, month, colonyClass)!.BandOf(level));

    /// <summary>Common practice, no source: below 2 not needed, 2 to 3 may be needed, above 3 needed, whatever the phase.</summary>
    [Theory]
    [InlineData(1.99, LineBand.Below)]
    [InlineData(2, LineBand.Between)]
    [InlineData(3, LineBand.Between)]
    [InlineData(3.01, LineBand.Above)]
    public void For_CommonPractice_HoldsInEveryPhaseAndMonth(double level, LineBand expected)
    {
        foreach (var phase in Enum.GetValues<SeasonPhase>())
        {
            for (var month = 1; month <= 12; month++)
                Assert.Equal(expected, Knowledge.LinePolicies["common-practice"].For(phase, month)!.BandOf(level));
        }
    }

    /// <summary>Delaplane and Hood 1999, Apidologie 30:383-395: August 15 to 38 mites a roll, February 0.4 to 2.8.</summary>
    [Fact]
    public void For_EtherRollSouthEastUsa_GivesThePublishedRange()
    {
        var policy = Knowledge.LinePolicies["se-usa-ether-mature"];

        Assert.Equal((15, 38), (policy.For(SeasonPhase.Decrease, 8)!.Watch!.Value, policy.For(SeasonPhase.Decrease, 8)!.Act!.Value));
        Assert.Equal((0.4, 2.8), (policy.For(SeasonPhase.Increase, 2)!.Watch!.Value, policy.For(SeasonPhase.Increase, 2)!.Act!.Value));
        Assert.False(policy.AppliesTo(Knowledge.Methods["alcohol-wash"].ScaleId));
    }

    [Fact]
    public void For_MonthWithoutAPublishedLine_GivesNone() =>
        Assert.Null(Knowledge.LinePolicies["osnabrueck-sugar-50-g"].For(SeasonPhase.Increase, 4));

    [Fact]
    public void For_PhaseWithoutAPublishedLine_GivesNone() =>
        Assert.Null(Knowledge.LinePolicies["nsw-jar"].For(SeasonPhase.Peak, 12));

    [Theory]
    [InlineData(1, 7)]
    [InlineData(2, 8)]
    [InlineData(7, 1)]
    [InlineData(12, 6)]
    public void For_SiteInTheOtherHemisphere_ReadsTheMonthSixMonthsAway(int siteMonth, int northernMonth)
    {
        foreach (var policy in Knowledge.LinePolicies.Where(p => p.Hemisphere == Hemisphere.North))
        {
            Assert.Equal(policy.For(SeasonPhase.Decrease, northernMonth), policy.For(SeasonPhase.Decrease, siteMonth, Hemisphere.South));
            Assert.Equal(policy.For(SeasonPhase.Decrease, northernMonth), policy.For(SeasonPhase.Decrease, northernMonth, Hemisphere.North));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(13)]
    public void For_NoSuchMonth_Throws(int month)
    {
        var policy = Knowledge.LinePolicies["common-practice"];

        Assert.Throws<ArgumentOutOfRangeException>(() => policy.For(SeasonPhase.Peak, month));
        Assert.Throws<ArgumentOutOfRangeException>(() => policy.For(SeasonPhase.Peak, month, Hemisphere.South));
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void BandOf_NoLevel_Throws(double level) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Knowledge.LinePolicies["common-practice"].Rows[0].BandOf(level));
}
