using System.Net;
using System.Text.Json;
using Foundress.Book.Demo;
using Foundress.Knowledge;

namespace Foundress.Server.Tests;

public abstract class BookForOthersTests(bool onPostgres) : IAsyncLifetime
{
    private const string Demo = "api/v1/operations/demo/";
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

    [Theory]
    [InlineData("calendar.ics", "text/calendar", "BEGIN:VCALENDAR")]
    [InlineData("apiaries.geojson", "application/geo+json", "FeatureCollection")]
    [InlineData("register", "text/html", "Register of controls")]
    [InlineData("register?format=csv", "text/csv", "state,start,end")]
    [InlineData("register?format=json", "application/json", "\"records\"")]
    public async Task Get_EachForm_HasItsTypeAndContent(string address, string type, string content)
    {
        var answer = await _site.Caller.GetAsync(Demo + address);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(type, answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains(content, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Register_Page_MayRunNothingAndSaysItIsInvented()
    {
        var answer = await _site.Caller.GetAsync(Demo + "register");
        Assert.Contains("default-src 'none'", string.Join(' ', answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Contains("nvented", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Register_Filtered_HoldsOnlyThatPart()
    {
        using var part = JsonDocument.Parse(await _site.Caller.GetStringAsync(Demo + "register?format=json&apiary=Heather%20bank&from=2026-01-01&agent=formic-acid-long"));
        var records = part.RootElement.GetProperty("records").EnumerateArray().ToArray();
        Assert.NotEmpty(records);
        Assert.All(records, record => Assert.Equal(("formic-acid-long", "Heather bank"), (record.GetProperty("agent").GetString(), record.GetProperty("apiaries")[0].GetString())));
    }

    [Theory]
    [InlineData("register?format=pdf", "format")]
    [InlineData("register?from=soon", "from")]
    [InlineData("register?from=2026-02-01&to=2026-01-01", "from")]
    [InlineData("register?apiary=Nowhere", "apiary")]
    public async Task Register_BadQuestion_NamesIt(string address, string field) =>
        await Problem.IsAsync(HttpStatusCode.BadRequest, field, await _site.Caller.GetAsync(Demo + address));

    [Fact]
    public async Task Calendar_ShortAddress_IsTheKeepersOwnBook()
    {
        var answer = await _site.Caller.GetAsync("calendar.ics");
        Assert.Equal("text/calendar", answer.Content.Headers.ContentType!.MediaType);
        Assert.DoesNotContain("BEGIN:VEVENT", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }
}

public sealed class BookForOthersTestsOnSqlite() : BookForOthersTests(onPostgres: false);

public sealed class BookForOthersTestsOnPostgres() : BookForOthersTests(onPostgres: true);
