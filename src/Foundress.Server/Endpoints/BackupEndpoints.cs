using Foundress.Storage;

namespace Foundress.Server.Endpoints;

internal static class BackupEndpoints
{
    public static void MapBackups(this IEndpointRouteBuilder api)
    {
        api.MapGet("/backups", (BookStore store) =>
            TypedResults.Ok(new BackupList(store.Folder.Backups, [.. store.Backups().Select(BackupLine.Of)])));
        api.MapPost("/backups", async (BookStore store, CancellationToken cancellation) =>
            TypedResults.Created((string?)null, BackupLine.Of(await store.BackupAsync(cancellation: cancellation))));
    }
}
