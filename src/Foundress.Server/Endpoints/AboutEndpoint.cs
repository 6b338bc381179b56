using System.Reflection;
using Foundress.Book.Journal;
using Foundress.Storage;

namespace Foundress.Server.Endpoints;

internal static class AboutEndpoint
{
    // Without the build's fingerprint.
    private static readonly string Version = typeof(AboutEndpoint).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    public static void MapAbout(this IEndpointRouteBuilder api) => api.MapGet("/about", async (BookStore store, CancellationToken cancellation) =>
    {
        var operations = (await store.OperationsAsync(cancellation)).Select(o => new AboutOperation(o.Operation, o.Entries)).ToArray();
        return TypedResults.Ok(new About(
            Version, store.Incarnation, operations, Array.Exists(operations, o => o.Id == Operations.Demo), await store.NowAsync(cancellation)));
    });
}
