namespace Foundress.Server.Running;

/// <summary>
/// Errors that come when the answer has begun and no reason can be given any more: the line is cut, so that the caller sees
/// that the answer is not whole, and the error is told without its message, which can hold what was recorded.
/// </summary>
internal sealed partial class LateErrors(RequestDelegate next, ILogger<LateErrors> log)
{
    public async Task InvokeAsync(HttpContext http)
    {
        try
        {
            await next(http);
        }
        catch (Exception error) when (http.Response.HasStarted)
        {
            if (!http.RequestAborted.IsCancellationRequested)
                LogLate(error.GetType(), error.StackTrace);
            http.Abort();
        }
    }

    [LoggerMessage(30, LogLevel.Error, "An answer was cut off by an error: {Type}\n{Place}")]
    private partial void LogLate(Type type, string? place);
}
