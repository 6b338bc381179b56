using System.Collections.Concurrent;
using System.Net;
using Foundress.Server.Problems;
using Foundress.Server.Running;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Foundress.Server.Tests.Running;

public class LateErrorTests
{
    [Fact]
    public async Task Error_AfterTheAnswerBegan_CutsTheLineAndIsToldWithoutItsMessage()
    {
        using var kept = new KeptLogs();
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders().AddProvider(kept).AddFilter("Microsoft.AspNetCore.Diagnostics.ExceptionHandlerMiddleware", LogLevel.None);
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0));
        builder.Services.AddProblemDetails().AddExceptionHandler<ProblemHandler>();
        await using var app = builder.Build();
        app.UseMiddleware<LateErrors>();
        app.UseExceptionHandler();
        app.MapGet("/", async (HttpContext http) =>
        {
            await http.Response.WriteAsync("[1, 2,");
            await http.Response.Body.FlushAsync();
            throw new InvalidOperationException(NamedRequests.Name);
        });
        await app.StartAsync();
        using var caller = new HttpClient();
        await Assert.ThrowsAnyAsync<HttpRequestException>(() => caller.GetStringAsync(app.Urls.First()));
        await app.StopAsync();
        Assert.Contains(kept.Lines, line => line.Contains("cut off", StringComparison.Ordinal) && line.Contains("InvalidOperationException", StringComparison.Ordinal));
        Assert.DoesNotContain(kept.Lines, line => line.Contains(NamedRequests.Name, StringComparison.Ordinal));
    }

    private sealed class KeptLogs : ILoggerProvider, ILogger
    {
        public ConcurrentQueue<string> Lines { get; } = new();

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Lines.Enqueue(formatter(state, exception) + exception);

        public void Dispose()
        {
        }
    }
}
