using System.Reflection;
using Foundress.Accounts;
using Foundress.Book.Journal;
using Foundress.Server.Accounts;
using Foundress.Storage;

namespace Foundress.Server.Endpoints;

internal static class AboutEndpoint
{
    // Without the build's fingerprint.
    private static readonly string Version = typeof(AboutEndpoint).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    public static void MapAbout(this IEndpointRouteBuilder api) => api.MapGet("/about", async (HttpContext http, BookStore store, CancellationToken cancellation) =>
    {
        // Counting them costs a look at every entry: not for strangers, who are shown none.
        var held = HasAccounts(http) && Caller.Of(http) is null ? [] : await store.OperationsAsync(cancellation);
        var operations = held.Where(o => MaySee(http, o.Operation)).Select(o => new AboutOperation(o.Operation, o.Entries)).ToArray();
        return TypedResults.Ok(new About(
            Version, store.Incarnation, operations, Array.Exists(operations, o => o.Id == Operations.Demo), await store.NowAsync(cancellation),
            HasAccounts(http), Caller.Of(http)?.Standing.Name,
            Caller.Of(http)?.Standing.Roles.Where(role => role.Value < Role.Helper).Select(role => role.Key).Order(StringComparer.Ordinal).ToArray()));
    });

    private static bool HasAccounts(HttpContext http) => http.RequestServices.GetService<AccountsDatabase>() is not null;

    private static bool MaySee(HttpContext http, string operation) =>
        !HasAccounts(http) || Caller.Of(http)?.Standing.Has(operation, Role.Reader) == true;
}
