using Microsoft.Extensions.Logging.Console;

namespace Foundress.Server.Running;

/// <summary>Sets up what the server writes of what happens: to standard error, without scopes, which hold addresses.</summary>
internal static class LogSetUp
{
    public static ILoggingBuilder AddBookConsole(this ILoggingBuilder logging, LogForm form)
    {
        // Standard output carries the address only.
        logging.Services.Configure<ConsoleLoggerOptions>(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        return form == LogForm.Json
            ? logging.AddJsonConsole(json => (json.IncludeScopes, json.UseUtcTimestamp, json.TimestampFormat) = (false, true, "O"))
            : logging.AddSimpleConsole(plain => plain.IncludeScopes = false);
    }
}
