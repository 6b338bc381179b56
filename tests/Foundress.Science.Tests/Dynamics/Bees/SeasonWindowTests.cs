using CsCheck;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Science.Tests.Dynamics.Bees;

public class SeasonWindowTests
{
    private static readonly Gen<SeasonWindow> AnyWindow = Gen.Select(Gen.Double[-182, 365], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], (opens, rise, full, fall) =>
    {
        double scale = 365d / Math.Max(rise + full + fall, 1);
        double fades = Math.Min(opens + (scale * (rise + full)), opens + 365);
        return new SeasonWindow(opens, Math.Min(opens + (scale * rise), fades), fades, Math.Max(fades, Math.Min(opens + (scale * (rise + full + fall)), opens + 365)));
    });

    [Fact]
    public void On_AnyDay_LiesBetween0And1() =>
        Gen.Select(AnyWindow, Gen.Double[-1000, 1000]).Sample((window, day) => window.On(day) is >= 0 and <= 1);

    [Fact]
    public void On_SameDayOfAnotherYear_IsTheSame() =>
        Gen.Select(AnyWindow, Gen.Double[1, 365]).Sample((window, day) => Math.Abs(window.On(day) - window.On(day + 365)) < 1e-9);

    [Theory]
    [InlineData(31, 0)]
    [InlineData(32, 0)]
    [InlineData(72, 0.5)]
    [InlineData(112, 1)]
    [InlineData(150, 1)]
    [InlineData(215, 0.5)]
    [InlineData(280, 0)]
    [InlineData(350, 0)]
    public void On_EdgesAndMiddles_AreThoseGiven(double day, double expected) =>
        Assert.Equal(expected, new SeasonWindow(32, 112, 150, 280).On(day), 12);

    [Fact]
    public void On_SeasonOverTheTurnOfTheYear_HoldsBeforeAndAfterIt()
    {
        var window = new SeasonWindow(-40, 20, 60, 120);

        Assert.Equal(window.On(-10), window.On(355), 12);
        Assert.InRange(window.On(355), 0.01, 0.99);
        Assert.Equal(0, window.On(200));
    }

    [Fact]
    public void Narrowed_AnyShift_IsStillASeason() =>
        Gen.Select(AnyWindow, Gen.Double[-200, 200], Gen.Double[-200, 200]).Sample((window, spring, autumn) =>
        {
            var moved = window.Narrowed(spring, autumn);
            return moved.Opens <= moved.Full && moved.Full <= moved.Fades && moved.Fades <= moved.Closes && moved.Closes - moved.Opens <= 365 + 1e-9;
        });

    [Theory]
    [InlineData(100, 90, 150, 200)]
    [InlineData(100, 110, 150, 470)]
    [InlineData(-200, 110, 120, 130)]
    [InlineData(double.NaN, 110, 120, 130)]
    public void Constructor_DaysOutOfOrder_AreRefused(double opens, double full, double fades, double closes) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeasonWindow(opens, full, fades, closes));
}
