using System.Text.Json;
using Foundress.Book.Jobs;

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
    public static ForecastRequest ReadRequest(string json) => JobJson.Read(json, ForecastContext.Default.ForecastRequest, "no request for a forecast");

    /// <summary>Reads a forecast.</summary>
    /// <exception cref="ArgumentException">The text is not one.</exception>
    public static ApiaryCourse ReadCourse(string json) => JobJson.Read(json, ForecastContext.Default.ApiaryCourse, "no forecast");
}
