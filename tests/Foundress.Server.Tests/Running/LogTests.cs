using System.Text.Json;
using Foundress.Server.Problems;
using Foundress.Server.Running;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Foundress.Server.Tests.Running;

public class LogTests
{
    [Fact]
    public async Task Log_Json_HasALineForEveryRequestAndNoNameInAny()
    {
        using var data = new TempData();
        await using var server = await ProgramRun.ServerAsync(data.Path, null, "--log", "json");
        var made = await NamedRequests.MakeAsync(server.Address);
        server.AskToEnd();
        var ended = await server.EndAsync();
        Assert.Equal(ServerExit.Done, ended.Code);
        Assert.DoesNotContain(NamedRequests.Name, ended.Output + ended.Errors, StringComparison.OrdinalIgnoreCase);
        var lines = ended.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line).RootElement).ToArray();
        var requests = lines.Where(line => line.GetProperty("Category").GetString() == typeof(RequestLog).FullName)
            .Select(line => line.GetProperty("State")).ToArray();
        Assert.Equal(made, requests.Length);
        var first = requests[0];
        Assert.Equal(("POST", "/api/v1/operations/{operation}/entries", "200"), (Text(first, "Method"), Text(first, "Route"), Text(first, "Status")));
        // The route of a request that ended in a problem is known, too.
        Assert.Equal(("GET", "/api/v1/operations/{operation}/report", "400"), (Text(requests[7], "Method"), Text(requests[7], "Route"), Text(requests[7], "Status")));
        Assert.Equal("other", Text(requests[^1], "Method"));
        Assert.All(lines, line => Assert.True(line.GetProperty("Timestamp").GetDateTimeOffset().Offset == TimeSpan.Zero));
    }

    [Fact]
    public async Task Log_Plain_SaysNothingOfRequests()
    {
        using var data = new TempData();
        await using var server = await ProgramRun.ServerAsync(data.Path);
        await NamedRequests.MakeAsync(server.Address);
        server.AskToEnd();
        Assert.Equal("", (await server.EndAsync()).Errors);
    }

    // What was recorded can stand in an error's message, so the message is left out.
    [Fact]
    public async Task Log_UnforeseenError_NamesItsKindAndPlaceOnly()
    {
        var log = new KeptLog();
        using var services = new ServiceCollection().AddProblemDetails().AddSingleton<ILogger<ProblemHandler>>(log).AddLogging().BuildServiceProvider();
        var handler = ActivatorUtilities.CreateInstance<ProblemHandler>(services);
        var http = new DefaultHttpContext { RequestServices = services };
        using var body = new MemoryStream();
        http.Response.Body = body;
        try
        {
            throw new InvalidOperationException($"Cannot fold {NamedRequests.Name}", new FormatException(NamedRequests.Name));
        }
        catch (InvalidOperationException error)
        {
            Assert.True(await handler.TryHandleAsync(http, error, default));
        }

        var line = Assert.Single(log.Lines);
        Assert.Contains("System.InvalidOperationException", line, StringComparison.Ordinal);
        Assert.Contains(nameof(Log_UnforeseenError_NamesItsKindAndPlaceOnly), line, StringComparison.Ordinal);
        Assert.DoesNotContain(NamedRequests.Name, line, StringComparison.Ordinal);
        var answer = System.Text.Encoding.UTF8.GetString(body.ToArray());
        Assert.Contains("Something went wrong", answer, StringComparison.Ordinal);
        Assert.DoesNotContain(NamedRequests.Name, answer, StringComparison.Ordinal);
        Assert.DoesNotContain("InvalidOperation", answer, StringComparison.Ordinal);
    }

    private static string? Text(JsonElement state, string name) => state.GetProperty(name).ToString();

    private sealed class KeptLog : ILogger<ProblemHandler>
    {
        public List<string> Lines { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Lines.Add(formatter(state, exception) + exception);
    }
}
