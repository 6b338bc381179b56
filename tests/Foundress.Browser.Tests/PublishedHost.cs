using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Foundress.Browser.Tests;

/// <summary>
/// Serves published files on a free port, with the server's exchange of entries kept in memory. It can do what the real
/// server must not: change its version under a running page, fail, and refuse.
/// </summary>
public sealed class PublishedHost : IAsyncDisposable
{
    private static readonly FileExtensionContentTypeProvider Types = new()
    {
        Mappings = { [".dat"] = "application/octet-stream", [".webmanifest"] = "application/manifest+json" },
    };

    private readonly WebApplication _app;
    private readonly Lock _gate = new();
    private readonly Dictionary<string, List<JsonObject>> _operations = [];

    private PublishedHost(WebApplication app, string root) => (_app, Root) = (app, root);

    /// <summary>The folder that is served; may be changed while pages are open.</summary>
    public string Root { get; set; }

    /// <summary>Whether the exchange answers 503.</summary>
    public bool Down { get; set; }

    /// <summary>Whether an invented book is offered.</summary>
    public bool OffersDemo { get; set; }

    /// <summary>How many entries it says the keeper's operation has; null to name no operation.</summary>
    public long? Told { get; set; }

    /// <summary>Kind of record that is refused, if any.</summary>
    public string? RefusedKind { get; set; }

    /// <summary>Names this life of the host's book.</summary>
    public Guid Incarnation { get; private set; } = Guid.NewGuid();

    /// <summary>Where it listens.</summary>
    public string Address => _app.Urls.Single();

    public static async Task<PublishedHost> StartAsync(string root)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Services.AddRequestDecompression();
        var app = builder.Build();
        app.UseRequestDecompression();
        var host = new PublishedHost(app, root);
        app.Run(host.AnswerAsync);
        await app.StartAsync();
        return host;
    }

    /// <summary>The entries an operation holds.</summary>
    public IReadOnlyList<JsonObject> Entries(string operation)
    {
        lock (_gate)
            return [.. _operations.GetValueOrDefault(operation) ?? []];
    }

    /// <summary>Loses everything and begins anew, as when an old backup is restored.</summary>
    public void BeginAnew()
    {
        lock (_gate)
            _operations.Clear();
        Incarnation = Guid.NewGuid();
    }

    /// <summary>Puts an entry into an operation.</summary>
    public void Put(string operation, JsonObject entry)
    {
        lock (_gate)
            Listed(operation).Add(entry);
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private List<JsonObject> Listed(string operation)
    {
        if (!_operations.TryGetValue(operation, out var list))
            _operations[operation] = list = [];
        return list;
    }

    private Task AnswerAsync(HttpContext http) => http.Request.Path.StartsWithSegments("/api/v1", out var rest)
        ? Down ? FailAsync(http) : ApiAsync(http, rest.Value!.Trim('/').Split('/'))
        : FileAsync(http);

    private static Task FailAsync(HttpContext http)
    {
        http.Response.StatusCode = 503;
        return Task.CompletedTask;
    }

    private async Task ApiAsync(HttpContext http, string[] path)
    {
        JsonObject? reply = (http.Request.Method, path) switch
        {
            ("GET", ["about"]) => new() { ["version"] = "0.1.0", ["incarnation"] = Incarnation.ToString(), ["operations"] = Operations(), ["demo"] = OffersDemo },
            ("GET", ["operations", var operation, "entries"]) => Page(operation, int.Parse(http.Request.Query["after"]!, CultureInfo.InvariantCulture), int.Parse(http.Request.Query["limit"]!, CultureInfo.InvariantCulture)),
            ("POST", ["operations", var operation, "entries"]) => Take(operation, (await JsonNode.ParseAsync(http.Request.Body))!.AsArray()),
            ("DELETE", ["operations", "demo"]) => DropDemo(),
            _ => null,
        };
        if (reply is null)
        {
            http.Response.StatusCode = 404;
            return;
        }

        http.Response.ContentType = "application/json";
        await http.Response.WriteAsync(reply.ToJsonString());
    }

    private JsonArray Operations() => Told is { } told ? [(JsonNode)new JsonObject { ["id"] = "home", ["entries"] = told }] : [];

    private JsonObject Page(string operation, int after, int limit)
    {
        lock (_gate)
        {
            var all = _operations.GetValueOrDefault(operation) ?? [];
            var page = all.Skip(after).Take(limit).Select(entry => entry.DeepClone()).ToArray();
            return new() { ["entries"] = new JsonArray(page), ["next"] = after + page.Length, ["more"] = after + page.Length < all.Count };
        }
    }

    private JsonObject Take(string operation, JsonArray entries)
    {
        int accepted = 0, known = 0;
        var refused = new JsonArray();
        lock (_gate)
        {
            var list = Listed(operation);
            foreach (var entry in entries.Select(node => node!.AsObject()))
            {
                if (RefusedKind is not null && (string?)entry["kind"] == RefusedKind)
                {
                    refused.Add((JsonNode)new JsonObject { ["id"] = (string)entry["id"]!, ["reason"] = "refused for the test" });
                }
                else if (list.Any(held => (string?)held["id"] == (string?)entry["id"]))
                {
                    known++;
                }
                else
                {
                    list.Add(entry.DeepClone().AsObject());
                    accepted++;
                }
            }
        }

        return new() { ["accepted"] = accepted, ["known"] = known, ["refused"] = refused };
    }

    private JsonObject DropDemo()
    {
        lock (_gate)
            _operations.Remove("demo");
        OffersDemo = false;
        return [];
    }

    private async Task FileAsync(HttpContext http)
    {
        var path = http.Request.Path.Value!.TrimStart('/');
        var file = Path.Combine(Root, path);
        if (path.Length == 0 || !File.Exists(file))
        {
            if (Path.HasExtension(path))
            {
                http.Response.StatusCode = 404;
                return;
            }

            file = Path.Combine(Root, "index.html");
        }

        http.Response.Headers.CacheControl = "no-cache";
        http.Response.ContentType = Types.TryGetContentType(file, out var type) ? type : "application/octet-stream";
        if (http.Request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.Ordinal) && File.Exists(file + ".br"))
        {
            http.Response.Headers.ContentEncoding = "br";
            file += ".br";
        }

        await http.Response.SendFileAsync(file);
    }
}
