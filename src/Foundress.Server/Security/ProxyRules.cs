using System.Net;
using Foundress.Server.Problems;

namespace Foundress.Server.Security;

/// <summary>
/// Takes a reverse proxy's word only when the proxy was named, and answers other computers only through it or over HTTPS.
/// A proxy in front of a server without accounts would open the book to everybody.
/// </summary>
internal sealed class ProxyRules(RequestDelegate next, Reach reach)
{
    private static readonly string[] Headers = ["Forwarded", "X-Forwarded-For", "X-Forwarded-Proto", "X-Forwarded-Host"];

    public Task InvokeAsync(HttpContext http)
    {
        var peer = http.Connection.RemoteIpAddress ?? IPAddress.Loopback;
        if (peer.IsIPv4MappedToIPv6)
            peer = peer.MapToIPv4();
        var isProxy = peer.Equals(reach.Proxy);
        if (!isProxy && Array.Exists(Headers, http.Request.Headers.ContainsKey))
        {
            throw new RequestProblemException(
                StatusCodes.Status421MisdirectedRequest,
                "This request came through a proxy that the server was not told of. Start the server with accounts and --proxy ADDRESS: docs/club-server.md shows how.");
        }

        if (!isProxy && !http.Request.IsHttps && !IPAddress.IsLoopback(peer))
            throw new RequestProblemException(StatusCodes.Status421MisdirectedRequest, reach.Proxy is null ? $"Open it as https://{reach.Name}:{http.Connection.LocalPort}/" : $"Open it as https://{reach.Name}/");
        return next(http);
    }
}
