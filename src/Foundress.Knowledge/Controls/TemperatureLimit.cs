namespace Foundress.Knowledge;

/// <summary>A limit of the outdoor temperature while a control is at work.</summary>
/// <param name="IsLeast">True when it may not be colder than this, false when it may not be warmer.</param>
/// <param name="Of">Which temperature of the day.</param>
/// <param name="Degrees">The limit in degrees Celsius.</param>
/// <param name="FirstDays">The limit counts in the first so many days only; null when it counts over the whole application.</param>
/// <param name="Text">What happens outside it, in plain words.</param>
public sealed record TemperatureLimit(bool IsLeast, DayTemperature Of, Figure Degrees, int? FirstDays, string Text);
