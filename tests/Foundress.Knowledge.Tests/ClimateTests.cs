using System.Globalization;
using CsCheck;
using Foundress.Science;
using Foundress.Science.Judging;

namespace Foundress.Knowledge.Tests;

public sealed class ClimateTests
{
    private static readonly Catalog<Climate> Climates = KnowledgeBase.In(CultureInfo.InvariantCulture).Climates;

    [Fact]
    public void DefaultFor_AnyLatitude_IsTheSameNorthAndSouth() =>
        Gen.Double[-90, 90].Sample(latitude => Climates.DefaultFor(latitude) == Climates.DefaultFor(-latitude));

    [Theory]
    [InlineData(0, "tropical")]
    [InlineData(-33, "mediterranean")]
    [InlineData(42, "temperate")]
    [InlineData(52.3, "temperate")]
    [InlineData(54, "cold")]
    [InlineData(90, "cold")]
    [InlineData(-90, "cold")]
    public void DefaultFor_EdgesOfBands_BelongToTheBandTheyStart(double latitude, string expected) =>
        Assert.Equal(expected, Climates.DefaultFor(latitude).Id);

    [Theory]
    [InlineData(90.001)]
    [InlineData(-91)]
    [InlineData(double.NaN)]
    public void DefaultFor_NoLatitude_Throws(double latitude) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Climates.DefaultFor(latitude));

    [Fact]
    public void YearIn_South_RunsSixMonthsApart() =>
        Assert.All(Climates, c => Assert.Equal(c.YearIn(Hemisphere.North).PhaseOn(new(2025, 8, 15)), c.YearIn(Hemisphere.South).PhaseOn(new(2025, 2, 15))));

    /// <summary>A year goes round: no colony is dormant the month after its peak, and each has a time of growth and of shrinking.</summary>
    [Fact]
    public void NorthernMonths_EveryClimate_IsAYearAColonyCanLive() =>
        Assert.All(Climates, climate =>
        {
            Assert.Contains(SeasonPhase.Increase, climate.NorthernMonths);
            Assert.Contains(SeasonPhase.Peak, climate.NorthernMonths);
            Assert.Contains(SeasonPhase.Decrease, climate.NorthernMonths);
            for (var i = 0; i < 12; i++)
            {
                if (climate.NorthernMonths[i] == SeasonPhase.Peak)
                    Assert.Contains(climate.NorthernMonths[(i + 1) % 12], new[] { SeasonPhase.Peak, SeasonPhase.Decrease });
            }
        });
}
