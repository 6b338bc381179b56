using CsCheck;
using Foundress.Science.Choosing;

namespace Foundress.Science.Tests.Choosing;

public class TemperatureTests
{
    private static readonly double[] Highs = [3, 5, 10, 15, 20, 23, 25, 25, 20, 14, 8, 4];
    private static readonly double[] Lows = [-3, -2, 1, 4, 9, 12, 14, 14, 10, 6, 2, -1];
    private static readonly MonthlyNormals Normals = new(Lows, Highs);

    [Fact]
    public void On_MiddleOfAMonth_IsTheMonthsNormal()
    {
        // The middle of April lies between its 15th and 16th.
        Assert.Equal(15, Normals.On(new DateOnly(2026, 4, 15))!.Value.High, 0.1);
        Assert.Equal(4, Normals.On(new DateOnly(2026, 4, 15))!.Value.Low, 0.1);
    }

    [Fact]
    public void On_TurnOfTheYear_LiesBetweenDecemberAndJanuary()
    {
        Assert.Equal(3.5, Normals.On(new DateOnly(2026, 1, 1))!.Value.High, 0.05);
        Assert.Equal(3.5, Normals.On(new DateOnly(2025, 12, 31))!.Value.High, 0.05);
    }

    [Fact]
    public void On_AnyDay_LiesBetweenItsMonthAndItsNeighboursAndMovesSlowly() =>
        Gen.Int[0, 1460].Sample(offset =>
        {
            DateOnly day = new DateOnly(2024, 1, 1).AddDays(offset);
            DayTemperatures now = Normals.On(day)!.Value;
            Assert.InRange(now.High, 3, 25);
            Assert.True(Math.Abs(now.High - Normals.On(day.AddDays(1))!.Value.High) < 0.3);
        });

    [Fact]
    public void MonthlyNormals_NotTwelveOrUpsideDown_Throw()
    {
        Assert.Throws<ArgumentException>(() => new MonthlyNormals(Lows[..11], Highs));
        Assert.Throws<ArgumentOutOfRangeException>(() => new MonthlyNormals(Highs, Lows));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DayTemperatures(double.NaN, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DayTemperatures(10, 70));
    }

    [Fact]
    public void On_ForetoldDay_TakesTheForecastAndTheNormalsForTheRest()
    {
        DateOnly day = new(2026, 7, 15);
        TemperatureForecast forecast = new(new Dictionary<DateOnly, DayTemperatures> { [day] = new(20, 36) }, Normals);

        Assert.Equal((36d, false), (forecast.On(day)!.Value.High, forecast.IsUsual(day)));
        Assert.True(forecast.IsUsual(day.AddDays(1)));
        Assert.Null(new TemperatureForecast(new Dictionary<DateOnly, DayTemperatures>()).On(day));
    }

    [Fact]
    public void Of_HeatInTheFirstDays_OnlyCountsThere()
    {
        DateOnly start = new(2026, 7, 10);
        var days = Enumerable.Range(0, 10).ToDictionary(start.AddDays, i => new DayTemperatures(15, i == 5 ? 35 : 24));
        TemperatureForecast forecast = new(days);
        TemperatureBound whole = new(false, DayReading.High, 29.5, null);

        WindowReading reading = WindowReading.Of(whole, forecast, start, 7);
        Assert.Equal((start.AddDays(5), 35d, 1, 0), (reading.FirstOutside, reading.Degrees, reading.DaysOutside, reading.DaysUnknown));
        Assert.Null(WindowReading.Of(whole with { FirstDays = 3 }, forecast, start, 7).FirstOutside);
        Assert.Equal(4, WindowReading.Of(whole, forecast, start, 14).DaysUnknown);
        Assert.Throws<ArgumentOutOfRangeException>(() => WindowReading.Of(whole, forecast, start, 0));
    }

    [Fact]
    public void Of_NothingOutside_TellsTheReadingNearestToTheLimit()
    {
        WindowReading reading = WindowReading.Of(new(true, DayReading.Mean, 15, null), Normals, new DateOnly(2026, 7, 1), 28);

        Assert.Null(reading.FirstOutside);
        Assert.True(reading.IsUsual);
        Assert.Equal(Enumerable.Range(0, 28).Min(i => Normals.On(new DateOnly(2026, 7, 1).AddDays(i))!.Value.Mean), reading.Degrees);
    }
}
