using System.Text.Json;

namespace Foundress.Book.Forecasts.Exchange;

/// <summary>Requests for forecasts, and forecasts, as JSON: how they are handed to another place and kept on a device.</summary>
public static class ForecastJson
{
    /// <summary>A request as JSON.</summary>
    public static string Write(ForecastRequest request) => JsonSerializer.Serialize(request, ForecastContext.Default.ForecastRequest);

    /// <summary>A forecast as JSON. Levels keep seven significant digits.</summary>
    public static string Write(ApiaryCourse course) => JsonSerializer.Serialize(course, ForecastContext.Default.ApiaryCourse);

    /// <summary>Reads a request.</summary>
    /// <exception cref="ArgumentException">The text is not one.</exception>
    public static ForecastRequest ReadRequest(string json)
    {
        try
        {
            return JsonSerializer.Deserialize(json, ForecastContext.Default.ForecastRequest)
                ?? throw new ArgumentException("A request for a forecast is a JSON object, not null.", nameof(json));
        }
        catch (JsonException error)
        {
            throw new ArgumentException($"This is no request for a forecast: {error.Message}", nameof(json), error);
        }
    }

    /// <summary>Reads a forecast.</summary>
    /// <exception cref="ArgumentException">The text is not one.</exception>
    public static ApiaryCourse ReadCourse(string json)
    {
        try
        {
            return JsonSerializer.Deserialize(json, ForecastContext.Default.ApiaryCourse)
                ?? throw new ArgumentException("A forecast is a JSON object, not null.", nameof(json));
        }
        catch (JsonException error)
        {
            throw new ArgumentException($"This is no forecast: {error.Message}", nameof(json), error);
        }
    }
}
