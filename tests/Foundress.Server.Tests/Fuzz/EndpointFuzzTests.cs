using System.Text;
using System.Text.Json;
using CsCheck;
using Foundress.Book.Demo;
using Foundress.Knowledge;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Foundress.Server.Tests.Fuzz;

/// <summary>Whatever is sent to whatever address: no error of the server's own, nothing told of its inside, and no entry touched.</summary>
public class EndpointFuzzTests : IAsyncLifetime
{
    private readonly Site _site = new();

    public async ValueTask InitializeAsync()
    {
        await _site.InitializeAsync();
        await _site.Server.Store.AppendAsync("home", [.. DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, new DateOnly(2026, 9, 1)).Select(entry => entry with { Operation = "home" })]);
    }

    public async ValueTask DisposeAsync()
    {
        await _site.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Requests_OfAnyKind_AreAnsweredOrRefusedInGoodForm()
    {
        var routes = _site.Server.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .SelectMany(endpoint => (endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? ["GET"])
                .Select(method => $"{method} /{endpoint.RoutePattern.RawText!.TrimStart('/')}")).Distinct().ToArray();
        Assert.Contains("POST /api/v1/operations/{operation}/entries", routes);
        // The web app's own files are many and alike.
        var files = routes.Where(route => !route.Contains("/api/", StringComparison.Ordinal) && !route.Contains("/health", StringComparison.Ordinal) && !route.Contains('{', StringComparison.Ordinal));
        routes = [.. routes.Except(files), .. files.Where(route => route.EndsWith("index.html", StringComparison.Ordinal) || route.EndsWith(".js", StringComparison.Ordinal)).Take(2), "GET /calendar.ics"];
        var before = await _site.TakeAllAsync("home");
        var seen = new int[600];
        await RequestGen.Requests(routes).SampleAsync(
            async request =>
            {
                var answer = await RawAnswer.ToRequestAsync(_site.Server.Address.Port, request);
                Interlocked.Increment(ref seen[answer.Status]);
                Check(answer, Encoding.UTF8.GetString(request));
            },
            iter: 4_000, threads: 2, print: request => Encoding.UTF8.GetString(request));
        // It reaches what it is meant to reach.
        Assert.True(seen[200] > 400 && seen[400] > 100 && seen[404] > 100 && seen[403] > 50 && seen[415] > 10 && seen[421] > 50, string.Join(' ', seen.Select((n, status) => (n, status)).Where(one => one.n > 0)));
        await UnharmedAsync(before);
    }

    [Fact]
    public async Task Bytes_HardlyHttp_EndTheConnectionAndNothingElse()
    {
        var before = await _site.TakeAllAsync("home");
        await RequestGen.Malformed.SampleAsync(
            async request =>
            {
                var answer = await RawAnswer.ToBytesAsync(_site.Server.Address.Port, request);
                // 505 is the web server's word for a version of HTTP that there is none of.
                Assert.True(answer.Status is < 500 or 505, $"{answer.Status} for {Convert.ToHexString(request)}");
                Assert.DoesNotContain("   at ", answer.Body, StringComparison.Ordinal);
            },
            iter: 2_000, threads: 2);
        await UnharmedAsync(before);
    }

    private async Task UnharmedAsync(IReadOnlyCollection<Foundress.Book.Journal.Entry> before)
    {
        Assert.Equal("ready", JsonDocument.Parse(await _site.Caller.GetStringAsync("health/ready")).RootElement.GetProperty("status").GetString());
        Assert.Equal(before, await _site.TakeAllAsync("home"));
        Assert.True(await _site.Server.Store.CheckAsync() >= before.Count);
    }

    internal static void Check(RawAnswer answer, string request)
    {
        if (answer.Status == 0)
        {
            Assert.Fail($"No answer to:\n{request}");
            return;
        }

        Assert.True(answer.Status < 500, $"{answer.Status} for\n{request}\n{answer.Body}");
        // The web server refuses what is no request before any of ours is asked: without a word.
        var isOurs = answer.Headers.ContainsKey("Content-Security-Policy");
        if (!isOurs)
        {
            Assert.True(answer.Status is 400 or 414 or 431 or 408 or 413 or 505 && answer.Body.Length == 0, $"{answer.Status} without the guarding headers for\n{request}");
            return;
        }

        Guards.Check(answer.Headers);
        if (answer.Status < 400)
            return;
        foreach (var inside in new[] { "   at ", "Exception", "Foundress.Server", "Microsoft.", "System.", ".cs:line" })
            Assert.DoesNotContain(inside, answer.Body, StringComparison.Ordinal);
        if (request.StartsWith("HEAD ", StringComparison.Ordinal) || answer.Status == 416)
            return;
        Assert.True(answer.Headers.GetValueOrDefault("Content-Type")?.StartsWith("application/problem+json", StringComparison.Ordinal), $"{answer.Status} {answer.Headers.GetValueOrDefault("Content-Type")} for\n{request}\n{answer.Body}");
        using var problem = JsonDocument.Parse(answer.Body);
        Assert.Equal(answer.Status, problem.RootElement.GetProperty("status").GetInt32());
        Assert.NotEmpty(problem.RootElement.GetProperty("title").GetString()!);
    }
}
