using System.Collections.Frozen;
using Foundress.Book.Journal;
using Microsoft.AspNetCore.StaticAssets;

namespace Foundress.Server.Security;

/// <summary>
/// Every address of the server and who may use it: the one place that says so. An address that is not in this list is closed
/// to everybody where there are accounts. Printed in <c>docs/access.md</c>.
/// </summary>
internal static class AccessRules
{
    private const string Api = "/api/v1";
    private const string Book = Api + "/operations/{operation}";
    private const string Account = Api + "/account";

    /// <summary>The rules, in the order they are printed.</summary>
    public static readonly IReadOnlyList<AccessRule> All =
    [
        new("GET", "{*path:nonfile}", Access.Public),
        new("*", "/api/{**path}", Access.Public),
        new("GET", "/health/live", Access.Public),
        new("GET", "/health/ready", Access.Public),
        new("GET", Api + "/about", Access.Public),
        new("GET", Api + "/openapi.json", Access.Public),
        new("GET", Api + "/schemas/entry.json", Access.Public),

        new("POST", Account + "/sign-in", Access.Public, Pace.Entrance),
        new("POST", Account + "/passkeys/challenge", Access.Public, Pace.Entrance),
        new("POST", Account + "/passkeys/sign-in", Access.Public, Pace.Entrance),
        new("POST", Account + "/link", Access.Public, Pace.Entrance),
        new("POST", Account + "/join", Access.Public, Pace.Entrance),
        new("GET", Account, Access.Known),
        new("POST", Account + "/sign-out", Access.Known),
        new("POST", Account + "/password", Access.SignedIn, Pace.Entrance),
        new("GET", Account + "/devices", Access.SignedIn),
        new("POST", Account + "/devices", Access.SignedIn),
        new("DELETE", Account + "/devices/{device:guid}", Access.SignedIn),
        new("GET", Account + "/calendar", Access.SignedIn),
        new("POST", Account + "/calendar", Access.SignedIn),
        new("DELETE", Account + "/calendar", Access.SignedIn),
        new("GET", Account + "/passkeys", Access.SignedIn),
        new("POST", Account + "/passkeys/options", Access.SignedIn),
        new("POST", Account + "/passkeys", Access.SignedIn),
        new("DELETE", Account + "/passkeys/{passkey}", Access.SignedIn),

        new("GET", Book + "/entries", Access.Read, Pace.Exchange),
        new("POST", Book + "/entries", Access.Write, Pace.Exchange),
        new("GET", Book + "/book", Access.Read, Pace.Exchange),
        new("GET", Book + "/report", Access.Read, Pace.Exchange),
        new("GET", Book + "/register", Access.Read, Pace.Exchange),
        new("GET", Book + "/calendar.ics", Access.Read, Pace.Exchange, ByCalendarLink: true),
        new("GET", Book + "/apiaries.geojson", Access.Read, Pace.Exchange),
        new("GET", Book + "/due", Access.Read, Pace.Exchange),
        new("GET", Book + "/apiaries", Access.Read, Pace.Exchange),
        new("GET", Book + "/apiaries/{apiary:guid}", Access.Read, Pace.Exchange),
        new("GET", Book + "/apiaries/{apiary:guid}/entries", Access.Read, Pace.Exchange),
        new("GET", Book + "/apiaries/{apiary:guid}/forecast", Access.Read, Pace.Exchange),
        new("GET", "/calendar.ics", Access.Read, Pace.Exchange, Operations.Home, ByCalendarLink: true),

        new("GET", Book + "/people", Access.Manage),
        new("PUT", Book + "/people/{person:guid}", Access.Manage),
        new("DELETE", Book + "/people/{person:guid}", Access.Manage),
        new("DELETE", Book + "/people/{person:guid}/devices/{device:guid}", Access.Manage),
        new("DELETE", Book + "/people/{person:guid}/calendar", Access.Manage),
        new("POST", Book + "/invitations", Access.Manage),
        new("DELETE", Book + "/invitations/{invitation:guid}", Access.Manage),
        new("GET", Book + "/sign-ins", Access.Manage),
        new("GET", Book + "/passed-on", Access.Manage),

        new("GET", Api + "/backups", Access.Administer),
        new("POST", Api + "/backups", Access.Administer),
        new("GET", Api + "/sign-ins", Access.Administer),
        new("DELETE", Book, Access.Administer),
    ];

    // How the framework serves them while the app is being worked on.
    private const string UnpackedFile = "{**path:file}";

    private static readonly AccessRule Asset = new("GET", "files of the web app", Access.Public);

    private static readonly FrozenDictionary<string, AccessRule> ByKey = All.ToFrozenDictionary(rule => rule.Key, StringComparer.Ordinal);

    /// <summary>Whether it is a file of the web app, which holds no data.</summary>
    public static bool IsAsset(Endpoint? endpoint) =>
        endpoint?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null || endpoint is RouteEndpoint { RoutePattern.RawText: UnpackedFile };

    /// <summary>The rule of an endpoint; null when none was made for it.</summary>
    public static AccessRule? Of(Endpoint? endpoint)
    {
        if (IsAsset(endpoint))
            return Asset;
        if (endpoint is not RouteEndpoint { RoutePattern.RawText: { } pattern })
            return null;
        var methods = endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? [];
        // Where HEAD is answered it is answered as GET is.
        var method = methods.Count == 0 ? "*" : methods.Contains(HttpMethods.Get) ? HttpMethods.Get : methods.Count == 1 ? methods[0] : "?";
        return ByKey.GetValueOrDefault($"{method} {pattern.TrimEnd('/')}");
    }
}
