using Foundress.Server.Running;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Foundress.Server.Endpoints;

internal static class HealthEndpoints
{
    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        app.MapGet("/health/live", () => TypedResults.Ok(new Health("live")));
        app.MapGet("/health/ready", async Task<Results<Ok<Health>, ProblemHttpResult>> (ReadyCheck check, CancellationToken cancellation) =>
            await check.WhyNotAsync(cancellation) is { } reason
                ? TypedResults.Problem(statusCode: StatusCodes.Status503ServiceUnavailable, title: "Not ready", detail: reason)
                : TypedResults.Ok(new Health("ready")));
    }
}
