using Foundress.Science.Sampling;

namespace Foundress.Science.Tests.Sampling;

public class JarDetectionTests
{
    [Fact]
    public void BeesFor_EveryBeeWithAMite_IsOne() => Assert.Equal(1, JarDetection.BeesFor(MiteLevel.Per100(100), Chance.Of(0.95)));

    [Fact]
    public void BeesFor_LowerRecovery_NeedsMoreBees() =>
        Assert.Equal(JarDetection.BeesFor(MiteLevel.Per100(0.9), Chance.Of(0.95)), JarDetection.BeesFor(MiteLevel.Per100(1), Chance.Of(0.95), 0.9));

    [Fact]
    public void ChanceOfNone_NoMites_IsCertain() => Assert.Equal(1d, JarDetection.ChanceOfNone(MiteLevel.Per100(0), 300).Value);

    [Fact]
    public void BeesFor_Certainty_IsRefused() =>
        Assert.Equal("chance", Assert.Throws<ArgumentOutOfRangeException>(() => JarDetection.BeesFor(MiteLevel.Per100(1), Chance.Of(1))).ParamName);

    [Fact]
    public void BeesFor_NoMites_IsRefused() =>
        Assert.Equal("level", Assert.Throws<ArgumentOutOfRangeException>(() => JarDetection.BeesFor(MiteLevel.Per100(0), Chance.Of(0.95))).ParamName);

    [Fact]
    public void ChanceOfNone_MoreMitesThanBees_IsRefused() =>
        Assert.Equal("level", Assert.Throws<ArgumentOutOfRangeException>(() => JarDetection.ChanceOfNone(MiteLevel.Per100(101), 300)).ParamName);
}
