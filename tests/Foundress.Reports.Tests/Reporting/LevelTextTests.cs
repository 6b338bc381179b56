using System.Globalization;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Tests.Reporting;

public sealed class LevelTextTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(0.001, "under 0.01")]
    [InlineData(0.25, "0.25")]
    [InlineData(4.375, "4.4")]
    [InlineData(99.96, "100")]
    public void Level_Sizes_RoundAsPeopleRead(double level, string expected) =>
        Assert.Equal(expected, LevelText.Level(level, CultureInfo.InvariantCulture));

    [Theory]
    [InlineData(0, 0, 1.2297, "0 (upper limit 1.2)")]
    [InlineData(4.375, 2.39185, 7.34051, "4.4 (2.4 to 7.3)")]
    [InlineData(0.3, 0, 1.7, "0.30 (0 to 1.7)")]
    public void Reading_Level_AlwaysCarriesItsInterval(double level, double lower, double upper, string expected) =>
        Assert.Equal(expected, LevelText.Reading(level, lower, upper, CultureInfo.InvariantCulture));
}
