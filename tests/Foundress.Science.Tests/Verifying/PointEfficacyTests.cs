using CsCheck;
using Foundress.Science.Verifying;

namespace Foundress.Science.Tests.Verifying;

public class PointEfficacyTests
{
    [Fact]
    public void HendersonTilton_NothingToCompareWith_RefusesAndIsNever100()
    {
        Assert.Equal((null, EfficacyRefusal.NoMitesBefore), Read(PointEfficacy.HendersonTilton(0, 0, 30, 30)));
        Assert.Equal((null, EfficacyRefusal.NoMitesInControlsBefore), Read(PointEfficacy.HendersonTilton(30, 0, 0, 30)));
        Assert.Equal((null, EfficacyRefusal.NoMitesInControlsAfter), Read(PointEfficacy.HendersonTilton(30, 0, 30, 0)));
        Assert.Equal((null, EfficacyRefusal.NoMitesBefore), Read(PointEfficacy.Reduction(0, 3)));
        Assert.Equal((null, EfficacyRefusal.NoMitesInControlsAfter), Read(PointEfficacy.Abbott(0, 3)));
        Assert.Equal((null, EfficacyRefusal.NoMitesInControlsAfter), Read(PointEfficacy.AbbottMortality(1, 1)));
        Assert.Equal((null, EfficacyRefusal.NoMitesInControlsAfter), Read(PointEfficacy.SunShepard(0.5, -1)));
        Assert.Equal((null, EfficacyRefusal.NoMitesFell), Read(PointEfficacy.MiteFall(0, 0)));
    }

    /// <summary>Sun-Shepard on the changes of the same counts is Henderson-Tilton, by algebra.</summary>
    [Fact]
    public void SunShepard_SameCounts_IsHendersonTilton() =>
        Gen.Select(Gen.Double[1, 500], Gen.Double[0, 500], Gen.Double[1, 500], Gen.Double[1, 500]).Sample((tb, ta, cb, ca) =>
            Assert.Equal(PointEfficacy.HendersonTilton(tb, ta, cb, ca).Share!.Value, PointEfficacy.SunShepard(1 - (ta / tb), (ca / cb) - 1).Share!.Value, 1e-9 * Math.Max(1, tb * ca)));

    [Fact]
    public void HendersonTilton_ControlsThatStay_IsThePlainReduction() =>
        Gen.Select(Gen.Double[1, 500], Gen.Double[0, 500], Gen.Double[1, 500]).Sample((before, after, control) =>
            Assert.Equal(PointEfficacy.Reduction(before, after).Share!.Value, PointEfficacy.HendersonTilton(before, after, control, control).Share!.Value, 1e-9));

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Reduction_NoCount_Throws(double count)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PointEfficacy.Reduction(count, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PointEfficacy.Abbott(1, count));
        Assert.Throws<ArgumentOutOfRangeException>(() => PointEfficacy.MiteFall(count, 1));
    }

    [Fact]
    public void AbbottMortality_NoShare_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => PointEfficacy.AbbottMortality(1.2, 0.1));

    private static (double? Share, EfficacyRefusal? Refusal) Read(PointEfficacy efficacy) => (efficacy.Share, efficacy.Refusal);
}
