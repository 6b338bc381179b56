using Foundress.Storage;

namespace Foundress.Server.Endpoints;

internal static class HealthEndpoints
{
    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        app.MapGet("/health/live", () => TypedResults.Ok(new Health("live")));
        // A book that cannot be read answers with the storage problem, 503.
        app.MapGet("/health/ready", async (BookStore store, CancellationToken cancellation) =>
        {
            await store.OperationsAsync(cancellation);
            return TypedResults.Ok(new Health("ready"));
        });
    }
}
