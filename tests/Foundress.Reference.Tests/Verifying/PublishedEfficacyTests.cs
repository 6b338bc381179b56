using Foundress.Science.Verifying;

namespace Foundress.Reference.Tests.Verifying;

public class PublishedEfficacyTests
{
    /// <summary>Abbott 1925, J Econ Entomol 18:265-267: 98 % die treated and 50 % untreated; subtracting gives 48, the formula 96.</summary>
    [Fact]
    public void AbbottMortality_AbbottsOwnExample_Is96() => Assert.Equal(0.96, PointEfficacy.AbbottMortality(0.98, 0.50).Share!.Value, 1e-12);

    /// <summary>
    /// US Environmental Protection Agency, smoothed bioassay, table J1 (as printed by an ecotoxicology package's documentation): 40 to a
    /// dose, 1, 1, 1, 1, 26 and 40 dead after pooling, 2.5 % dead untreated: 0, 0, 0, 0, 0.6410256, 1.
    /// </summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(26, 0.6410256)]
    [InlineData(40, 1)]
    public void AbbottMortality_SmoothedBioassayTable_IsAsPrinted(int dead, double printed) =>
        Assert.Equal(printed, PointEfficacy.AbbottMortality(dead / 40d, 0.025).Share!.Value, 5e-8);

    /// <summary>A statistics page's worked table on the same plots: Henderson-Tilton 78.46 (30 to 6 treated, 28 to 26 untreated), Abbott 76.92.</summary>
    [Fact]
    public void HendersonTilton_PrintedWorkedTable_IsAsPrinted()
    {
        Assert.Equal(78.46, 100 * PointEfficacy.HendersonTilton(30, 6, 28, 26).Share!.Value, 0.005);
        Assert.Equal(76.92, 100 * PointEfficacy.Abbott(26, 6).Share!.Value, 0.005);
    }

    /// <summary>An open-source trial library's own tests: 40 to 60 untreated, 50 to 5 treated, 93.333; Abbott 100 and 20, 80; 200 to 50, 75.</summary>
    [Fact]
    public void HendersonTilton_OpenSourceTest_IsAsThere()
    {
        Assert.Equal(93.333, 100 * PointEfficacy.HendersonTilton(50, 5, 40, 60).Share!.Value, 0.001);
        Assert.Equal(93.333, 100 * PointEfficacy.SunShepard(0.9, 0.5).Share!.Value, 0.001);
        Assert.Equal(0.80, PointEfficacy.Abbott(100, 20).Share!.Value, 1e-12);
        Assert.Equal(0.75, PointEfficacy.Reduction(200, 50).Share!.Value, 1e-12);
        Assert.Equal(-0.5, PointEfficacy.HendersonTilton(30, 15, 30, 10).Share!.Value, 1e-12);
    }

    /// <summary>Calderone 1999 (abstract): 99, 70 and 51 % of mites died under strips, thymol blend and formic acid, 33 % untreated.</summary>
    [Theory]
    [InlineData(0.99, 98.507)]
    [InlineData(0.70, 55.224)]
    [InlineData(0.51, 26.866)]
    public void AbbottMortality_AutumnTrial_ByArithmetic(double dead, double expected) =>
        Assert.Equal(expected, 100 * PointEfficacy.AbbottMortality(dead, 0.33).Share!.Value, 0.001);

    /// <summary>Formula of Dietemann et al. 2013, J Apic Res 52(1), 4.5.4: 1,900 under the control and 100 under the follow-up.</summary>
    [Fact]
    public void MiteFall_WithFollowUp_IsTheShareOfTheWholeFall() => Assert.Equal(0.95, PointEfficacy.MiteFall(1900, 100).Share!.Value, 1e-12);
}
