using Microsoft.AspNetCore.Diagnostics;

namespace Foundress.Server.Running;

/// <summary>
/// A line for every request: the kind of address, never the address itself, which can name an operation or an apiary; and
/// neither who asked nor from where.
/// </summary>
internal sealed partial class RequestLog(RequestDelegate next, TimeProvider time, ILogger<RequestLog> log)
{
    private static readonly string[] Methods = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"];

    public async Task InvokeAsync(HttpContext http)
    {
        var begun = time.GetTimestamp();
        var method = Array.IndexOf(Methods, http.Request.Method) is var known and >= 0 ? Methods[known] : "other";
        try
        {
            await next(http);
        }
        finally
        {
            // An error takes the endpoint off the request and keeps it beside the error.
            var endpoint = http.GetEndpoint() ?? http.Features.Get<IExceptionHandlerFeature>()?.Endpoint;
            Log(method, Route(endpoint), http.Response.StatusCode, (long)time.GetElapsedTime(begun).TotalMilliseconds);
        }
    }

    /// <summary>The kind of address, for example <c>/api/v1/operations/{operation}/entries</c>.</summary>
    internal static string Route(Endpoint? endpoint) => (endpoint as RouteEndpoint)?.RoutePattern.RawText ?? "none";

    [LoggerMessage(10, LogLevel.Information, "{Method} {Route} {Status} in {Milliseconds} ms")]
    private partial void Log(string method, string route, int status, long milliseconds);
}
