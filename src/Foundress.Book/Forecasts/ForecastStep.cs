namespace Foundress.Book.Forecasts;

/// <summary>How far a forecast is.</summary>
/// <param name="Done">Steps done.</param>
/// <param name="Of">Steps there are.</param>
/// <param name="Course">The forecast, with the last step; null before.</param>
public readonly record struct ForecastStep(int Done, int Of, ApiaryCourse? Course);
