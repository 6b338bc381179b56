using Foundress.Book.Journal;
using Foundress.Server.Books;
using Foundress.Server.Problems;
using Foundress.Storage;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Foundress.Server.Endpoints;

internal static class DemoEndpoint
{
    public static void MapDemo(this IEndpointRouteBuilder api) => api.MapDelete("/operations/{operation}", RemoveAsync);

    private static async Task<Ok<DemoRemoved>> RemoveAsync(string operation, BookStore store, ApiaryBooks books, CancellationToken cancellation)
    {
        if (operation != Operations.Demo)
        {
            throw new RequestProblemException(
                StatusCodes.Status403Forbidden,
                EndpointTexts.FormatDemoOnly(Operations.Demo));
        }

        var removed = await store.RemoveDemoAsync(cancellation);
        books.Forget(operation);
        return TypedResults.Ok(new DemoRemoved(removed));
    }
}
