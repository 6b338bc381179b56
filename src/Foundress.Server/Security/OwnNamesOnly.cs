using Foundress.Server.Problems;

namespace Foundress.Server.Security;

/// <summary>
/// Answers only under the server's own names. A page of another site can make its own name point here (DNS rebinding),
/// but the browser then still sends that name.
/// </summary>
internal sealed class OwnNamesOnly(RequestDelegate next, Reach reach)
{
    /// <summary>Whether a name always means the computer one sits at.</summary>
    public static bool IsThisComputer(string host) => host is "localhost" or "127.0.0.1" or "[::1]";

    public Task InvokeAsync(HttpContext http)
    {
        var host = http.Request.Host.Host;
        var isPublicName = host.Equals(reach.Name, StringComparison.OrdinalIgnoreCase);
        if (isPublicName && !http.Request.IsHttps)
        {
            throw new RequestProblemException(
                StatusCodes.Status421MisdirectedRequest, reach.Proxy is null ? AccessTexts.FormatOpenAs($"https://{reach.Name}:{http.Connection.LocalPort}/") : AccessTexts.ProxyNotByHttps);
        }

        if (isPublicName || IsThisComputer(host))
            return next(http);
        var own = reach.Name is null ? $"http://localhost:{http.Connection.LocalPort}/" : reach.Proxy is null ? $"https://{reach.Name}:{http.Connection.LocalPort}/" : $"https://{reach.Name}/";
        throw new RequestProblemException(StatusCodes.Status421MisdirectedRequest, AccessTexts.FormatNotANameHere(host, own));
    }
}
