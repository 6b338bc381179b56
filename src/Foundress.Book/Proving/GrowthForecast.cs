namespace Foundress.Book.Proving;

/// <summary>What a forecast says would have become of the level, had nothing been done.</summary>
/// <param name="Growth">Median of the level after over the level before, above 0.</param>
/// <param name="LogSpread">Standard deviation of its natural logarithm, 0 to 2.</param>
public readonly record struct GrowthForecast(double Growth, double LogSpread);
