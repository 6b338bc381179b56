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
            reasons.Missing(Ground.Temperature, ChoosingTexts.TemperaturesUnknown);
            return;
        }

        foreach (var limit in agent.Temperatures)
        {
            var bound = new TemperatureBound(limit.IsLeast, ReadingOf(limit.Of), limit.Degrees.Value, limit.FirstDays);
            var reading = WindowReading.Of(bound, weather, situation.Start, days);
            var wanted = Wanted(bound);
            if (reading.FirstOutside is { } day)
            {
                reasons.Against(Ground.Temperature, $"{Outside(wanted, reading, day)} {limit.Text}", limit.Degrees.Source.Text);
            }
            else if (reading.DaysUnknown > 0)
            {
                reasons.Missing(Ground.Temperature, Plural.Pick(reading.DaysUnknown, ChoosingTexts.FormatTemperatureOfDaysUnknown(reading.DaysUnknown)));
            }
            else if (reading.IsUsual && Math.Abs(reading.Degrees!.Value - bound.Degrees) < Close)
            {
                reasons.Note($"{ChoosingTexts.FormatCloseToLimit(wanted, Degrees(reading.Degrees.Value))} {limit.Text}");
            }
        }
    }

    private static DayReading ReadingOf(DayTemperature of) => of switch
    {
        DayTemperature.Minimum => DayReading.Low,
        DayTemperature.Mean => DayReading.Mean,
        _ => DayReading.High,
    };

    private static string Wanted(TemperatureBound bound) => (bound.IsLeast, bound.Reading) switch
    {
        (true, DayReading.Low) => ChoosingTexts.FormatAtLeastLow(Degrees(bound.Degrees)),
        (true, DayReading.Mean) => ChoosingTexts.FormatAtLeastMean(Degrees(bound.Degrees)),
        (true, _) => ChoosingTexts.FormatAtLeastHigh(Degrees(bound.Degrees)),
        (false, DayReading.Low) => ChoosingTexts.FormatAtMostLow(Degrees(bound.Degrees)),
        (false, DayReading.Mean) => ChoosingTexts.FormatAtMostMean(Degrees(bound.Degrees)),
        _ => ChoosingTexts.FormatAtMostHigh(Degrees(bound.Degrees)),
    };

    private static string Outside(string wanted, WindowReading reading, DateOnly on)
    {
        var (day, degrees) = (Say.Day(on), Degrees(reading.Degrees!.Value));
        return (reading.IsUsual, reading.DaysOutside > 1) switch
        {
            (true, false) => ChoosingTexts.FormatOutsideUsual(wanted, day, degrees),
            (true, true) => ChoosingTexts.FormatOutsideUsualDays(wanted, day, degrees, reading.DaysOutside),
            (false, false) => ChoosingTexts.FormatOutsideForetold(wanted, day, degrees),
            _ => ChoosingTexts.FormatOutsideForetoldDays(wanted, day, degrees, reading.DaysOutside),
        };
    }

    private static string Degrees(double value) => value.ToString("0.#", CultureInfo.CurrentCulture) + " °C";
}
