using System.Net;

namespace Foundress.Server.Tests;

public abstract class SecurityTests(Site site)
{
    [Theory]
    [InlineData("bees.example")]
    [InlineData("localhost.bees.example")]
    [InlineData("192.168.1.20")]
    public async Task Request_UnderAForeignName_IsRefused(string host)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "api/v1/about");
        request.Headers.Host = host;
        await Problem.IsAsync(HttpStatusCode.MisdirectedRequest, host, await site.Caller.SendAsync(request));
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1:5210")]
    [InlineData("[::1]:5210")]
    public async Task Request_UnderALocalName_IsAnswered(string host)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "api/v1/about");
        request.Headers.Host = host;
        Assert.Equal(HttpStatusCode.OK, (await site.Caller.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("POST", "api/v1/operations/home/entries", "Origin", "https://bees.example")]
    [InlineData("POST", "api/v1/operations/home/entries", "Origin", "null")]
    [InlineData("POST", "api/v1/operations/home/entries", "Origin", "http://127.0.0.1:1")]
    [InlineData("POST", "api/v1/operations/home/entries", "Sec-Fetch-Site", "cross-site")]
    [InlineData("POST", "api/v1/backups", "Sec-Fetch-Site", "same-site")]
    [InlineData("DELETE", "api/v1/operations/demo", "Origin", "https://bees.example")]
    public async Task Write_FromAnotherSite_IsRefusedAndDoesNothing(string method, string path, string header, string value)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        if (path.EndsWith("entries", StringComparison.Ordinal))
            request.Content = Site.Json(Site.Entry(1));
        request.Headers.Add(header, value);
        await Problem.IsAsync(HttpStatusCode.Forbidden, "another site", await site.Caller.SendAsync(request));
        Assert.Empty(await site.TakeAllAsync("home"));
        Assert.Empty(site.Server.Store.Backups());
    }

    [Fact]
    public async Task Write_FromOwnPage_IsTaken()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, Site.Entries("own")) { Content = Site.Json(Site.Entry(1, "own")) };
        request.Headers.Add("Origin", $"http://127.0.0.1:{site.Server.Address.Port}");
        request.Headers.Add("Sec-Fetch-Site", "same-origin");
        Assert.Equal(HttpStatusCode.OK, (await site.Caller.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("", "no-cache")]
    [InlineData("service-worker.js", "no-cache")]
    [InlineData("api/v1/about", "no-store")]
    [InlineData("api/v1/nothing", "no-store")]
    public async Task Answer_OfEveryKind_CarriesTheGuardingHeaders(string path, string caching)
    {
        var answer = await site.Caller.GetAsync(path);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("default-src 'self'", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self' 'wasm-unsafe-eval';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-inline", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal(caching, answer.Headers.CacheControl?.ToString());
        Assert.False(answer.Headers.Contains("Server"));
    }
}

public sealed class SecurityTestsOnSqlite(Site site) : SecurityTests(site), IClassFixture<Site>;

public sealed class SecurityTestsOnPostgres(PostgresSite site) : SecurityTests(site.Required()), IClassFixture<PostgresSite>;
