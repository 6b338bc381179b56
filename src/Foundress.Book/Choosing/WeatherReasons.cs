using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Choosing;

namespace Foundress.Book.Choosing;

/// <summary>What the temperature over the whole application says of a control.</summary>
internal static class WeatherReasons
{
    /// <summary>Usual temperatures this close to a limit are mentioned: single days lie several degrees off them (product choice).</summary>
    private const double Close = 3;

    internal static void Find(ControlAgent agent, Situation situation, int days, Reasons reasons)
    {
        if (agent.Temperatures.Count == 0)
            return;
        if (situation.Temperatures is not { } weather)
        {
            reasons.Missing(Ground.Temperature, "Not known: enter the usual temperatures of this apiary, or import a forecast; it has limits of temperature.");
            return;
        }

        foreach (var limit in agent.Temperatures)
        {
            var bound = new TemperatureBound(limit.IsLeast, ReadingOf(limit.Of), limit.Degrees.Value, limit.FirstDays);
            var reading = WindowReading.Of(bound, weather, situation.Start, days);
            var kind = $"{(limit.IsLeast ? "at least" : "at most")} {Degrees(bound.Degrees)} as {Words(bound.Reading)}";
            if (reading.FirstOutside is { } day)
            {
                reasons.Against(
                    Ground.Temperature,
                    $"It wants {kind}; {(reading.IsUsual ? "usual" : "foretold")} on {Say.Day(day)}: {Degrees(reading.Degrees!.Value)}{(reading.DaysOutside > 1 ? $", and on {reading.DaysOutside} days in all" : string.Empty)}. {limit.Text}",
                    limit.Degrees.Source.Text);
            }
            else if (reading.DaysUnknown > 0)
            {
                reasons.Missing(Ground.Temperature, $"Not known: the temperature of {Say.Count(reading.DaysUnknown, "day", "days")} of the application. Enter the usual temperatures of this apiary, or a longer forecast.");
            }
            else if (reading.IsUsual && Math.Abs(reading.Degrees!.Value - bound.Degrees) < Close)
            {
                reasons.Note($"It wants {kind}; usual then: {Degrees(reading.Degrees.Value)}. Single days may lie outside: look at the forecast before you start. {limit.Text}");
            }
        }
    }

    private static DayReading ReadingOf(DayTemperature of) => of switch
    {
        DayTemperature.Minimum => DayReading.Low,
        DayTemperature.Mean => DayReading.Mean,
        _ => DayReading.High,
    };

    private static string Words(DayReading reading) => reading switch
    {
        DayReading.Low => "the lowest of the day",
        DayReading.Mean => "the mean of the day",
        _ => "the highest of the day",
    };

    private static string Degrees(double value) => value.ToString("0.#", CultureInfo.InvariantCulture) + " °C";
}
