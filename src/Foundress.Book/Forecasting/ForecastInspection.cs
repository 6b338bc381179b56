namespace Foundress.Book.Forecasting;

/// <summary>An inspection as forecasts use it.</summary>
/// <param name="On">The day.</param>
/// <param name="FramesOfBees">Frames covered with bees; null when not looked at.</param>
/// <param name="FramesOfBrood">Frames with brood; null when not looked at.</param>
public sealed record ForecastInspection(DateOnly On, double? FramesOfBees, double? FramesOfBrood);
