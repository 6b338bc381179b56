using System.Globalization;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Tests.Reporting;

public sealed class LevelTextTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(0.001, "under 0.01")]
    [InlineData(4.375, "4.38")]
    [InlineData(9.994, "9.99")]
    [InlineData(9.996, "10.0")]
    [InlineData(99.96, "100")]
    public void Level_Sizes_RoundAsPeopleRead(double level, string expected) =>
        Assert.Equal(expected, LevelText.Level(level, CultureInfo.InvariantCulture));

    [Theory]
    [InlineData(0, "under 0.1 %")]
    [InlineData(0.0044, "0.4 %")]
    [InlineData(0.91605, "92 %")]
    [InlineData(0.995, "99.5 %")]
    [InlineData(1, "over 99.9 %")]
    public void Chance_Ends_AreNeverCertain(double chance, string expected) =>
        Assert.Equal(expected, LevelText.Chance(chance, CultureInfo.InvariantCulture));
}
