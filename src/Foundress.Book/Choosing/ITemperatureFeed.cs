using Foundress.Science.Choosing;

namespace Foundress.Book.Choosing;

/// <summary>A source of forecasts, for a program that has one. None is built in: the keeper's file and normals do without.</summary>
public interface ITemperatureFeed
{
    /// <summary>The days foretold for a place; empty when the source has none.</summary>
    /// <param name="latitude">Degrees, south negative.</param>
    /// <param name="longitude">Degrees, west negative.</param>
    /// <param name="cancellation">Stops asking.</param>
    Task<IReadOnlyDictionary<DateOnly, DayTemperatures>> ForecastAsync(double latitude, double longitude, CancellationToken cancellation);
}
