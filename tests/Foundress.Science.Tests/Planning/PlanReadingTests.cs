using Foundress.Science.Planning;

namespace Foundress.Science.Tests.Planning;

public class PlanReadingTests
{
    // Two colonies, four days read: 0, 7, 14, 21.
    private static readonly float[] Chances = [0.5f, 0.1f, 0.3f, 0.2f, 0.1f, 0.4f, 0.05f, 0.1f];

    [Fact]
    public void Reading_AllDaysCount_TakesTheWorstColonyOfTheWorstDay()
    {
        PlanReading reading = new(7, 2, [.. Chances], new(0.35, 0));
        Assert.Equal(0.5, reading.Peak, 1e-6);
        Assert.Equal(0, reading.PeakDay);
        Assert.Equal(0, reading.FirstOver);
        Assert.False(reading.Holds);
        Assert.Equal(7 * (0.5 + 0.1 + 0.3 + 0.2 + 0.1 + 0.4 + 0.05 + 0.1) / 2, reading.DaysOver, 1e-5);
        Assert.Equal(0.3, reading.Mean(0), 1e-6);
    }

    [Fact]
    public void Reading_JudgedLater_LeavesEarlierDaysOut()
    {
        PlanReading reading = new(7, 2, [.. Chances], new(0.35, 3));
        Assert.Equal(0.4, reading.Peak, 1e-6);
        Assert.Equal(14, reading.FirstOver);
        Assert.Equal(0.3, reading.PeakOf(0), 1e-6);
        Assert.Equal(0.4, reading.PeakOf(1), 1e-6);
        Assert.True(new PlanReading(7, 2, [.. Chances], new(0.35, 15)).Holds);
    }

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(-0.1f)]
    [InlineData(1.1f)]
    public void Reading_NoChance_IsRefused(float chance) =>
        Assert.Throws<ArgumentException>(() => new PlanReading(7, 2, [0.1f, chance], new(0.2, 0)));

    [Fact]
    public void Reading_NotWholeDays_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => new PlanReading(7, 2, [0.1f], new(0.2, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlanReading(0, 1, [0.1f], new(0.2, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlanReading(7, 1, [0.1f], new(0, 0)));
    }
}
