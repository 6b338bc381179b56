using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Foundress.Book.Planning.Exchange;

/// <summary>Requests for plans, and plans, as JSON: how they are handed to another place.</summary>
public static class PlanJson
{
    /// <summary>A request as JSON.</summary>
    public static string Write(PlanRequest request) => JsonSerializer.Serialize(request, PlanContext.Default.PlanRequest);

    /// <summary>Plans as JSON. Levels of fans are rounded to a ten-thousandth of a mite per 100 bees.</summary>
    public static string Write(ControlPlans plans) => JsonSerializer.Serialize(plans, PlanContext.Default.ControlPlans);

    /// <summary>Reads a request.</summary>
    /// <exception cref="ArgumentException">The text is not one.</exception>
    public static PlanRequest ReadRequest(string json) => Read(json, PlanContext.Default.PlanRequest, "no request for plans");

    /// <summary>Reads plans.</summary>
    /// <exception cref="ArgumentException">The text is not such.</exception>
    public static ControlPlans ReadPlans(string json) => Read(json, PlanContext.Default.ControlPlans, "no list of plans");

    private static T Read<T>(string json, JsonTypeInfo<T> type, string what)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize(json, type) ?? throw new ArgumentException($"This is {what}: it is null.", nameof(json));
        }
        catch (JsonException error)
        {
            throw new ArgumentException($"This is {what}: {error.Message}", nameof(json), error);
        }
    }
}
