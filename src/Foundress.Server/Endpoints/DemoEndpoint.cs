using Foundress.Book.Journal;
using Foundress.Server.Problems;
using Foundress.Storage;

namespace Foundress.Server.Endpoints;

internal static class DemoEndpoint
{
    public static void MapDemo(this IEndpointRouteBuilder api) => api.MapDelete(
        "/operations/{operation}", async (string operation, BookStore store, CancellationToken cancellation) =>
        operation == Operations.Demo
            ? TypedResults.Ok(new DemoRemoved(await store.RemoveDemoAsync(cancellation)))
            : throw new RequestProblemException(
                StatusCodes.Status403Forbidden,
                $"Only the invented records of '{Operations.Demo}' can be removed. What a keeper recorded is struck by a later entry, never erased."));
}
