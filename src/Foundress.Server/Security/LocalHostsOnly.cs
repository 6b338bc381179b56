using Foundress.Server.Problems;

namespace Foundress.Server.Security;

/// <summary>
/// Answers only under this computer's own names. A page of another site can make its own name point here (DNS rebinding),
/// but the browser then still sends that name.
/// </summary>
internal sealed class LocalHostsOnly(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext http) => http.Request.Host.Host is "localhost" or "127.0.0.1" or "[::1]"
        ? next(http)
        : throw new RequestProblemException(
            StatusCodes.Status421MisdirectedRequest, $"'{http.Request.Host.Host}' is not a name of this server. Open it as http://localhost:{http.Connection.LocalPort}/");
}
