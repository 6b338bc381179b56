using System.Net;
using System.Text.Json;
using Foundress.Book.Demo;
using Foundress.Knowledge;
using Foundress.Server.Books;
using Microsoft.Extensions.Logging.Abstractions;

namespace Foundress.Server.Tests;

/// <summary>Callers of one server read it in different languages at the same time.</summary>
public sealed class LanguageTests : IAsyncLifetime
{
    private readonly Site _site = new();

    public ValueTask InitializeAsync() => _site.InitializeAsync();

    public ValueTask DisposeAsync() => _site.DisposeAsync();

    [Theory]
    [InlineData("apiaries", "Probe")]
    [InlineData("due", "Maßnahme")]
    [InlineData("report?format=text", "Milben")]
    [InlineData("register", "Bestandsbuch")]
    public async Task Answer_AskedForInGerman_IsGermanAndTheNextEnglishAgain(string address, string german)
    {
        await FillAsync();
        var first = await GetAsync(address, "en");
        var other = await GetAsync(address, "de-CH, de;q=0.9, en;q=0.5");
        Assert.DoesNotContain(german, first, StringComparison.OrdinalIgnoreCase);
        Assert.Contains(german, other, StringComparison.OrdinalIgnoreCase);
        Assert.NotEqual(first, other);
        Assert.Equal(first, await GetAsync(address, "en"));
        Assert.Equal(first, await GetAsync(address, "fr"));
        Assert.Equal(first, await GetAsync(address, null));
        // English first, German also: neither German words nor German numbers.
        Assert.Equal(first, await GetAsync(address, "en-US, en;q=0.9, de;q=0.8"));
    }

    // What programs read must not change with who asks.
    [Fact]
    public async Task Entries_AskedForInGerman_AreTheSameBytes()
    {
        await FillAsync();
        Assert.Equal(await GetAsync("entries?after=0&limit=2000", "en"), await GetAsync("entries?after=0&limit=2000", "de"));
    }

    [Theory]
    [InlineData("GET", "api/v1/nothing", HttpStatusCode.NotFound, "No such address", "There is nothing at this address", "Diese Adresse gibt es nicht", "Unter dieser Adresse ist nichts")]
    [InlineData("GET", "nothing.png", HttpStatusCode.NotFound, "Not Found", null, "Nicht gefunden", null)]
    [InlineData("POST", "nowhere", HttpStatusCode.MethodNotAllowed, "Method Not Allowed", null, "Diese Art von Anfrage ist hier nicht möglich", null)]
    [InlineData("GET", "api/v1/operations/home/report?from=soon", HttpStatusCode.BadRequest, "The request cannot be answered", "from: 'soon' is not a day.", "Die Anfrage kann nicht beantwortet werden", "from: „soon“ ist kein Datum.")]
    [InlineData("GET", "api/v1/operations/home/register?from=2026-05-02&to=2026-05-01", HttpStatusCode.BadRequest, "The request cannot be answered", "from: 2026-05-02 lies after to: 2026-05-01. Turn them round.", "Die Anfrage kann nicht beantwortet werden", "from: 2026-05-02 liegt nach to: 2026-05-01.")]
    [InlineData("GET", "api/v1/operations/home/entries?limit=0", HttpStatusCode.BadRequest, "The request cannot be answered", "limit: '0' is not a whole number from 1 to", "Die Anfrage kann nicht beantwortet werden", "limit: „0“ ist keine ganze Zahl von 1 bis")]
    [InlineData("DELETE", "api/v1/operations/home", HttpStatusCode.Forbidden, "The request cannot be answered", "Only the invented records of 'demo' can be removed.", "Die Anfrage kann nicht beantwortet werden", "Nur die erfundenen Aufzeichnungen von „demo“")]
    public async Task Problem_AskedForInGerman_IsGerman(string method, string address, HttpStatusCode status, string title, string? detail, string germanTitle, string? germanDetail)
    {
        await AssertProblemAsync(method, address, "en", status, title, detail);
        await AssertProblemAsync(method, address, "de", status, germanTitle, germanDetail);
        await AssertProblemAsync(method, address, "fr", status, title, detail);
    }

    // The one before everything else: a page of another site may ask for nothing.
    [Fact]
    public async Task Problem_OfAnotherSitesPage_IsGerman()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "api/v1/operations/home/entries") { Content = Site.Json("[]") };
        request.Headers.AcceptLanguage.ParseAdd("de");
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        using var answer = await _site.Caller.SendAsync(request);
        await Problem.IsAsync(HttpStatusCode.Forbidden, "Eine Seite einer anderen Website wollte diese Änderung.", answer);
    }

    [Theory]
    [InlineData("en", "operation: the entry belongs to 'other' and was sent to 'home'.")]
    [InlineData("de", "operation: Der Eintrag gehört zu „other“ und wurde an „home“ gesendet.")]
    public async Task BadEntry_Sent_IsRefusedInTheCallersLanguage(string language, string reason)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "api/v1/operations/home/entries") { Content = Site.Json(Site.Entry(1, "other"), Site.Entry(2)) };
        request.Headers.AcceptLanguage.ParseAdd(language);
        using var answer = await _site.Caller.SendAsync(request);
        using var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
        Assert.Equal(1, json.RootElement.GetProperty("accepted").GetInt32());
        Assert.Equal(reason, json.RootElement.GetProperty("refused")[0].GetProperty("reason").GetString());
    }

    [Fact]
    public async Task Book_AfterAStart_IsReadAhead()
    {
        await FillAsync();
        using var books = new ApiaryBooks(_site.Server.Store);
        using var ahead = new ReadAhead(_site.Server.Store, books, NullLogger<ReadAhead>.Instance);
        Assert.Equal(0, books.Of("home").ReadUpTo);
        await ahead.StartAsync(TestContext.Current.CancellationToken);
        await ahead.Done;
        Assert.True(books.Of("home").ReadUpTo > 0);
    }

    private async Task AssertProblemAsync(string method, string address, string language, HttpStatusCode status, string title, string? detail)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), address);
        request.Headers.AcceptLanguage.ParseAdd(language);
        using var answer = await _site.Caller.SendAsync(request);
        Assert.Equal(status, answer.StatusCode);
        using var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
        Assert.Equal(title, problem.RootElement.GetProperty("title").GetString());
        if (detail is not null)
            Assert.StartsWith(detail, problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    private async Task FillAsync()
    {
        var today = DateOnly.FromDateTime(DateTime.Now);
        foreach (var some in DemoBook.Entries(KnowledgeBase.Load(), 4711, today).Select(entry => entry with { Operation = "home" }).Chunk(1_000))
            await _site.SendAsync("home", some);
    }

    private async Task<string> GetAsync(string address, string? language)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"api/v1/operations/home/{address}");
        if (language is not null)
            request.Headers.AcceptLanguage.ParseAdd(language);
        using var answer = await _site.Caller.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync();
    }
}
