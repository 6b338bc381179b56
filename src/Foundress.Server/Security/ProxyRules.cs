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
                AccessTexts.UnknownProxy);
        }

        if (!isProxy && !http.Request.IsHttps && !IPAddress.IsLoopback(peer))
            throw new RequestProblemException(StatusCodes.Status421MisdirectedRequest, AccessTexts.FormatOpenAs(reach.Proxy is null ? $"https://{reach.Name}:{http.Connection.LocalPort}/" : $"https://{reach.Name}/"));
        return next(http);
    }
}
