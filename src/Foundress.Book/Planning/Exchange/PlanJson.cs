using System.Text.Json;
using Foundress.Book.Jobs;

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
    public static PlanRequest ReadRequest(string json) => JobJson.Read(json, PlanContext.Default.PlanRequest, "no request for plans");

    /// <summary>Reads plans.</summary>
    /// <exception cref="ArgumentException">The text is not such.</exception>
    public static ControlPlans ReadPlans(string json) => JobJson.Read(json, PlanContext.Default.ControlPlans, "no list of plans");
}
