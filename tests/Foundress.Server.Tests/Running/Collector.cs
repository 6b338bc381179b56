using System.Collections.Concurrent;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace Foundress.Server.Tests.Running;

/// <summary>Takes what is sent by the OpenTelemetry protocol over HTTP, and keeps it byte for byte.</summary>
internal sealed class Collector : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly ConcurrentQueue<(string Path, string Text)> _taken = new();

    private Collector(WebApplication app) => _app = app;

    public string Address => _app.Urls.First();

    /// <summary>Everything sent to a path, texts as they stand between the other bytes.</summary>
    public string Text(string path) => string.Concat(_taken.Where(one => one.Path == path).Select(one => one.Text));

    public IEnumerable<string> Paths => _taken.Select(one => one.Path).Distinct().Order(StringComparer.Ordinal);

    public static async Task<Collector> StartAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0));
        var collector = new Collector(builder.Build());
        collector._app.MapPost("/{**path}", async (HttpContext http) =>
        {
            using var body = new MemoryStream();
            await http.Request.Body.CopyToAsync(body);
            collector._taken.Enqueue((http.Request.Path, Encoding.UTF8.GetString(body.ToArray())));
            return Results.Bytes([], "application/x-protobuf");
        });
        await collector._app.StartAsync();
        return collector;
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();
}
