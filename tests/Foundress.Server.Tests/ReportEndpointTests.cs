using System.Net;
using System.Text.Json;
using Foundress.Book.Demo;
using Foundress.Knowledge;

namespace Foundress.Server.Tests;

public abstract class ReportEndpointTests(bool onPostgres) : IAsyncLifetime
{
    private const string Address = "api/v1/operations/demo/report";
    private readonly Site _site = new(onPostgres);

    public async ValueTask InitializeAsync()
    {
        await _site.Required().InitializeAsync();
        await _site.Server.Store.AppendAsync("demo", DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, new DateOnly(2026, 9, 1)));
    }

    public async ValueTask DisposeAsync()
    {
        await _site.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Report_Page_IsMarkedInventedAndMayRunNothing()
    {
        var answer = await _site.Caller.GetAsync(Address + "?to=2026-09-01");
        Assert.Equal("text/html", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains("default-src 'none'", string.Join(' ', answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        var page = await answer.Content.ReadAsStringAsync();
        Assert.Contains("nvented", page, StringComparison.Ordinal);
        Assert.Contains("Mill orchard", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Report_Json_HoldsTheApiaries()
    {
        using var report = JsonDocument.Parse(await _site.Caller.GetStringAsync(Address + "?to=2026-09-01&format=json"));
        Assert.Equal(3, report.RootElement.GetProperty("apiaries").GetArrayLength());
    }

    [Theory]
    [InlineData("?format=pdf", "format")]
    [InlineData("?to=yesterday", "to")]
    [InlineData("?from=2026-09-02&to=2026-09-01", "from")]
    public async Task Report_BadQuestion_NamesIt(string query, string field) =>
        await Problem.IsAsync(HttpStatusCode.BadRequest, field, await _site.Caller.GetAsync(Address + query));

    [Fact]
    public async Task Report_EmptyBook_SaysSo() =>
        Assert.Contains("no apiary yet", await _site.Caller.GetStringAsync("api/v1/operations/home/report?format=text"), StringComparison.Ordinal);
}

public sealed class ReportEndpointTestsOnSqlite() : ReportEndpointTests(onPostgres: false);

public sealed class ReportEndpointTestsOnPostgres() : ReportEndpointTests(onPostgres: true);
