namespace Foundress.Book.Proving.Exchange;

/// <summary>What a <see cref="GrowthJob"/> found.</summary>
/// <param name="Growth">Median of the level after over the level before without the control, above 0; null where no forecast can say.</param>
/// <param name="LogSpread">Standard deviation of its natural logarithm; null with it.</param>
public sealed record GrowthAnswer(double? Growth, double? LogSpread)
{
    /// <summary>The forecast; null where none can say.</summary>
    public GrowthForecast? Forecast() => Growth is { } growth && LogSpread is { } spread ? new GrowthForecast(growth, spread) : null;
}
