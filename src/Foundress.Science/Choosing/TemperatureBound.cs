namespace Foundress.Science.Choosing;

/// <summary>A limit of the outdoor temperature over an application.</summary>
/// <param name="IsLeast">True when no day may be colder, false when none may be warmer.</param>
/// <param name="Reading">Which temperature of the day.</param>
/// <param name="Degrees">Degrees Celsius.</param>
/// <param name="FirstDays">The limit counts in the first so many days; null for the whole application.</param>
public readonly record struct TemperatureBound(bool IsLeast, DayReading Reading, double Degrees, int? FirstDays)
{
    /// <summary>The reading of a day.</summary>
    public double Of(DayTemperatures day) => Reading switch
    {
        DayReading.Low => day.Low,
        DayReading.Mean => day.Mean,
        _ => day.High,
    };

    /// <summary>Whether a reading is outside.</summary>
    public bool IsBrokenBy(double degrees) => IsLeast ? degrees < Degrees : degrees > Degrees;
}
