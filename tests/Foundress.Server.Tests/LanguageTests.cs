using System.Net;
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
    }

    // What programs read must not change with who asks.
    [Fact]
    public async Task Entries_AskedForInGerman_AreTheSameBytes()
    {
        await FillAsync();
        Assert.Equal(await GetAsync("entries?after=0&limit=2000", "en"), await GetAsync("entries?after=0&limit=2000", "de"));
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
