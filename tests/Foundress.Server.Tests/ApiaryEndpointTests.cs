using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Book;
using Foundress.Book.Demo;
using Foundress.Book.Dues;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Seasons;
using Foundress.Knowledge;
using Foundress.Storage;
using Foundress.Web.Sync;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Server.Tests;

/// <summary>What the server says of apiaries is what the whole book says, and it follows what comes.</summary>
public abstract class ApiaryEndpointTests(bool onPostgres) : IAsyncLifetime
{
    // Of the server and the tests alike, and it stands: no day changes in the middle.
    private readonly FakeTimeProvider _time = new(DateTimeOffset.UtcNow);

    private Site _site = null!;

    private DateOnly Today => DateOnly.FromDateTime(_time.GetLocalNow().DateTime);

    public ValueTask InitializeAsync()
    {
        _site = new Site(onPostgres, new BookStoreOptions { Time = _time });
        return _site.Required().InitializeAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _site.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task DueAndApiaries_DemoBook_SayWhatTheWholeBookSays()
    {
        var ledger = await FillAsync();
        var (dues, seasons) = Expected(ledger);
        var due = await GetAsync("due?limit=2000");
        Assert.Equal(dues.Count, due.GetProperty("total").GetInt32());
        Assert.Equal(dues.Select(item => $"{item.Key} {item.Text}"), due.GetProperty("items").EnumerateArray().Select(item => $"{item.GetProperty("key").GetString()} {item.GetProperty("text").GetString()}"));
        var apiaries = (await GetAsync("apiaries")).GetProperty("apiaries").EnumerateArray().ToArray();
        Assert.Equal(seasons.Select(season => season.Sentence), apiaries.Select(apiary => apiary.GetProperty("sentence").GetString()));
        Assert.Equal(dues.Count, apiaries.Sum(apiary => apiary.GetProperty("due").GetInt32()));
        Assert.Equal(1, (await GetAsync("due?limit=1")).GetProperty("items").GetArrayLength());

        var first = await GetAsync($"apiaries/{apiaries[0].GetProperty("id").GetGuid()}");
        var living = ledger.State.ColoniesIn(seasons[0].Apiary.Id, Today);
        Assert.Equal(living.Select(colony => colony.Name), first.GetProperty("colonies").EnumerateArray().Select(colony => colony.GetProperty("name").GetString()));
        Assert.All(first.GetProperty("dues").EnumerateArray(), item => Assert.Equal(seasons[0].Apiary.Id.Value, item.GetProperty("apiary").GetGuid()));
    }

    [Fact]
    public async Task Due_JarOverTheLineSentLater_IsTheFirstThingToDecide()
    {
        var ledger = await FillAsync();
        var colony = ledger.State.Colonies.Values.First(colony => colony.LivesOn(Today) && ledger.State.CoursesOf(colony.Id).All(course => course.End is not null));
        _ = await GetAsync("due");
        var jar = Write(new JarRecord(Today, "alcohol-wash", [60], JarBees.Counted(300), colony.Id));
        await _site.SendAsync("home", jar);
        var items = (await GetAsync("due")).GetProperty("items").EnumerateArray().ToArray();
        Assert.Contains(items, item => item.GetProperty("kind").GetString() == "decide" && item.GetProperty("colonies").EnumerateArray().Any(one => one.GetProperty("id").GetGuid() == colony.Id.Value));
        var page = await GetAsync($"apiaries/{colony.Apiary}");
        Assert.Equal("overTheLine", page.GetProperty("apiary").GetProperty("urgency").GetString());
        var line = page.GetProperty("colonies").EnumerateArray().Single(one => one.GetProperty("id").GetGuid() == colony.Id.Value);
        Assert.Equal("above", line.GetProperty("jar").GetProperty("standing").GetString());

        await _site.SendAsync("home", Write(new Strike(jar.Id, "wrong hive")));
        var after = await GetAsync($"apiaries/{colony.Apiary}");
        Assert.NotEqual(60 / 3d, after.GetProperty("colonies").EnumerateArray().Single(one => one.GetProperty("id").GetGuid() == colony.Id.Value).GetProperty("jar").GetProperty("per100Bees").GetDouble());
    }

    // What the phone's own line reads of it: how large the book is, what there is to choose from, and a part.
    [Fact]
    public async Task BookServer_AsksForApiariesAndAPart_ReadsThem()
    {
        var ledger = await FillAsync();
        var line = new BookServer(_site.Caller, new Packing());
        Assert.Equal(ledger.Count, (await line.AboutAsync()).Entries?["home"]);
        var apiaries = await line.ApiariesAsync("home");
        Assert.Equal(
            ledger.State.ApiariesByName.Select(apiary => (apiary.Id, apiary.Name, ledger.State.ColoniesIn(apiary.Id, Today).Count)).OrderBy(one => one.Id.Value),
            apiaries.OrderBy(one => one.Id.Value));
        var page = await line.PullPartAsync("home", apiaries[0].Id, 0);
        Assert.NotEmpty(page!.Entries);
        Assert.False(string.IsNullOrEmpty(page.Members));
        Assert.NotNull(page.Incarnation);
        Assert.Null(await line.PullPartAsync("home", new ApiaryId(Guid.CreateVersion7()), 0));
    }

    // A phone that takes one apiary alone says of it what a phone with everything says.
    [Fact]
    public async Task Entries_OfOneApiary_AreEnoughForItAndFewerThanAll()
    {
        var ledger = await FillAsync();
        foreach (var apiary in ledger.State.ApiariesByName)
        {
            var (part, members) = await PartAsync(apiary.Id, 200);
            Assert.True(part.Count < ledger.Count, $"{part.Count} of {ledger.Count}");
            var own = new Ledger();
            own.Add(part);
            var strips = new SeasonStrips(own.State, KnowledgeBase.Load(), CultureInfo.InvariantCulture);
            Assert.Equal(
                Expected(ledger).Seasons.Single(season => season.Apiary.Id == apiary.Id).Sentence,
                new SeasonOverview(own.State, KnowledgeBase.Load(), strips).Of(own.State.Apiaries[apiary.Id], Today).Sentence);
            Assert.Equal(members, (await PartAsync(apiary.Id, 2000)).Members);
        }

        // A colony that comes brings older entries: the name of the part changes, and the caller begins again.
        var (home, other) = (ledger.State.ApiariesByName[0].Id, ledger.State.ApiariesByName[1].Id);
        var before = (await PartAsync(home, 2000)).Members;
        var coming = ledger.State.ColoniesIn(other, Today)[0];
        await _site.SendAsync("home", Write(new ColonyMoved(coming.Id, home, Today)));
        Assert.NotEqual(before, (await PartAsync(home, 2000)).Members);
    }

    [Fact]
    public async Task Apiary_UnknownOrBadLimit_IsNamed()
    {
        await FillAsync();
        await Problem.IsAsync(HttpStatusCode.NotFound, "no apiary of this book", await _site.Caller.GetAsync($"api/v1/operations/home/apiaries/{Guid.NewGuid()}"));
        await Problem.IsAsync(HttpStatusCode.BadRequest, "limit: '0'", await _site.Caller.GetAsync("api/v1/operations/home/due?limit=0"));
        Assert.Equal(0, (await (await _site.Caller.GetAsync("api/v1/operations/nobody/due")).Content.ReadFromJsonAsync<JsonElement>()).GetProperty("total").GetInt32());
    }

    [Fact]
    public async Task Due_DemoRemoved_IsEmpty()
    {
        await _site.SendAsync("demo", [.. DemoBook.Entries(KnowledgeBase.Load(), 4711, Today)]);
        Assert.NotEqual(0, (await _site.Caller.GetFromJsonAsync<JsonElement>("api/v1/operations/demo/due")).GetProperty("total").GetInt32());
        (await _site.Caller.DeleteAsync("api/v1/operations/demo")).EnsureSuccessStatusCode();
        Assert.Equal(0, (await _site.Caller.GetFromJsonAsync<JsonElement>("api/v1/operations/demo/due")).GetProperty("total").GetInt32());
    }

    private (IReadOnlyList<DueItem> Dues, IReadOnlyList<ApiarySeason> Seasons) Expected(Ledger ledger)
    {
        var strips = new SeasonStrips(ledger.State, KnowledgeBase.Load(), CultureInfo.InvariantCulture);
        return (new DueItems(ledger.State, KnowledgeBase.Load(), strips).On(Today), new SeasonOverview(ledger.State, KnowledgeBase.Load(), strips).On(Today));
    }

    private static int _written;

    private Entry Write(Foundress.Book.Records.Record record) => new(
        new EntryId(new Guid(900_000 + Interlocked.Increment(ref _written), 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 1)), "home", "keeper", "phone",
        new HybridTime(_time.GetUtcNow().ToUnixTimeMilliseconds() + _written, 0), RecordKinds.Of(record), RecordKinds.CurrentSchema, RecordJson.Write(record));

    private async Task<Ledger> FillAsync()
    {
        var entries = DemoBook.Entries(KnowledgeBase.Load(), 4711, Today).Select(entry => entry with { Operation = "home" }).ToArray();
        foreach (var some in entries.Chunk(1_000))
            await _site.SendAsync("home", some);
        var ledger = new Ledger();
        ledger.Add(entries);
        return ledger;
    }

    private Task<JsonElement> GetAsync(string address) => _site.Caller.GetFromJsonAsync<JsonElement>("api/v1/operations/home/" + address);

    private async Task<(List<Entry> Entries, string Members)> PartAsync(ApiaryId apiary, int limit)
    {
        var (entries, cursor) = (new List<Entry>(), 0L);
        while (true)
        {
            var page = await GetAsync($"apiaries/{apiary}/entries?after={cursor}&limit={limit}");
            entries.AddRange(page.GetProperty("entries").EnumerateArray().Select(EntryJson.Read));
            cursor = page.GetProperty("next").GetInt64();
            if (!page.GetProperty("more").GetBoolean())
                return (entries, page.GetProperty("members").GetString()!);
        }
    }
}

public sealed class ApiaryEndpointTestsOnSqlite() : ApiaryEndpointTests(onPostgres: false);

public sealed class ApiaryEndpointTestsOnPostgres() : ApiaryEndpointTests(onPostgres: true);
