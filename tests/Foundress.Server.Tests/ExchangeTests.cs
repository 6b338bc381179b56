using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using CsCheck;
using Foundress.Book;
using Foundress.Book.Journal;

namespace Foundress.Server.Tests;

public abstract class ExchangeTests(Site site)
{
    private static readonly Gen<Entry> Colliding =
        Gen.Select(Gen.Int[0, 8], Gen.Long[0, 3], Gen.Int[0, 2]).Select((number, clock, text) => Site.Entry(number, clock: clock, payload: $$"""{"n":{{text}}}"""));

    [Fact]
    public async Task Send_NewAndKnown_AreCounted()
    {
        var first = await site.SendAsync("count", Site.Entry(1, "count"), Site.Entry(2, "count"));
        var life = site.Server.Store.Incarnation;
        Assert.Equal($$"""{"accepted":2,"known":0,"refused":[],"incarnation":"{{life}}"}""", first.GetRawText());
        var second = await site.SendAsync("count", Site.Entry(2, "count"), Site.Entry(3, "count"));
        Assert.Equal($$"""{"accepted":1,"known":1,"refused":[],"incarnation":"{{life}}"}""", second.GetRawText());
    }

    [Fact]
    public async Task Take_InPages_GivesBackExactlyWhatWasSent()
    {
        var entries = Enumerable.Range(0, 25).Select(n => Site.Entry(n, "pages")).ToArray();
        await site.SendAsync("pages", entries);
        Assert.Equal(entries, await site.TakeAllAsync("pages", limit: 7));
    }

    [Fact]
    public async Task Take_OperationNobodyWroteIn_IsEmpty() => Assert.Empty(await site.TakeAllAsync("unknown"));

    [Fact]
    public async Task Take_OperationWithSpacesAndAccents_IsFound()
    {
        await site.SendAsync("Les Ruchers d'été", Site.Entry(1, "Les Ruchers d'été"));
        Assert.Single(await site.TakeAllAsync("Les Ruchers d'été"));
    }

    [Theory]
    [InlineData("after=-1", "after: '-1'")]
    [InlineData("after=x", "after: 'x'")]
    [InlineData("after=1&after=2", "after: '1,2'")]
    [InlineData("after=99999999999999999999", "after: '99999999999999999999'")]
    [InlineData("limit=0", "limit: '0'")]
    [InlineData("limit=2001", "limit: '2001'")]
    [InlineData("limit=1.5", "limit: '1.5'")]
    public async Task Take_BadNumber_IsNamed(string query, string words) =>
        await Problem.IsAsync(HttpStatusCode.BadRequest, words, await site.Caller.GetAsync($"{Site.Entries("home")}?{query}"));

    [Theory]
    [InlineData("", "not valid JSON")]
    [InlineData("[{\"id\":", "not valid JSON")]
    [InlineData("{}", "JSON array")]
    [InlineData("\"jar\"", "JSON array")]
    [InlineData("null", "JSON array")]
    public async Task Send_NoArray_IsRefused(string body, string words) =>
        await Problem.IsAsync(HttpStatusCode.BadRequest, words, await site.Caller.PostAsync(Site.Entries("home"), Site.Json(body)));

    [Fact]
    public async Task Send_BadEntriesAmongGood_KeepsTheGoodAndNamesTheBad()
    {
        var good = Site.Entry(1, "mixed");
        var other = Site.Entry(2, "elsewhere");
        var deep = Site.Entry(3, "mixed", payload: """{"a":[[[[[[[[[[[[1]]]]]]]]]]]]}""");
        string Broken(string from, string to) => EntryJson.Write(Site.Entry(4, "mixed")).Replace(from, to, StringComparison.Ordinal);
        var body = $$"""
            [{{EntryJson.Write(good)}}, {{EntryJson.Write(other)}}, {{EntryJson.Write(deep)}}, 7, {"id":5},
             {{Broken("\"schema\":1", "\"schema\":\"1\"")}}, {{Broken("\"keeper\"", "null")}}, {{Broken("\"keeper\"", "\"\\ud800\"")}},
             {{Broken("\"payload\"", "\"pay\\ud800load\"")}}]
            """;
        var answer = await site.Caller.PostAsync(Site.Entries("mixed"), Site.Json(body));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var result = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal(1, result.GetProperty("accepted").GetInt32());
        var refused = result.GetProperty("refused").EnumerateArray()
            .Select(r => (r.GetProperty("index").GetInt32(), r.GetProperty("id").GetString(), Field: r.GetProperty("reason").GetString()!.Split(':')[0]))
            .ToArray();
        var broken = Site.Entry(4).Id.ToString();
        Assert.Equal(
            [(1, other.Id.ToString(), "operation"), (2, deep.Id.ToString(), "payload"), (3, null, "An entry is a JSON object."), (4, null, "id"),
             (5, broken, "schema"), (6, broken, "author"), (7, broken, "author"), (8, broken, "The names of an entry's fields must be valid Unicode text.")],
            refused);
        Assert.Equal([good], await site.TakeAllAsync("mixed"));
    }

    [Fact]
    public async Task Send_MoreThanTheMost_IsRefusedWhole()
    {
        var entries = Enumerable.Range(0, 2_001).Select(n => Site.Entry(n, "many")).ToArray();
        await Problem.IsAsync(HttpStatusCode.RequestEntityTooLarge, "2001", await site.Caller.PostAsync(Site.Entries("many"), Site.Json(entries)));
        Assert.Empty(await site.TakeAllAsync("many"));
    }

    // By hand, since the answer comes before the body: a client that is already sending may see a broken connection instead.
    [Theory]
    [InlineData("Content-Length: 8388609", "")]
    [InlineData("Transfer-Encoding: chunked", "800001\r\n")]
    public async Task Send_HugeBody_IsRefused(string length, string start)
    {
        using var caller = new TcpClient();
        await caller.ConnectAsync(IPAddress.Loopback, site.Server.Address.Port);
        var stream = caller.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST /{Site.Entries("huge")} HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n{length}\r\nConnection: close\r\n\r\n{start}"));
        if (start.Length > 0)
            await stream.WriteAsync(new byte[FoundressServer.GreatestBody + 1]);
        using var reader = new StreamReader(stream);
        Assert.Equal("HTTP/1.1 413 Payload Too Large", await reader.ReadLineAsync());
        Assert.Contains("The most is 8 MB", await reader.ReadToEndAsync(), StringComparison.Ordinal);
        Assert.Empty(await site.TakeAllAsync("huge"));
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    public async Task Send_NotAsJson_IsRefused(string type)
    {
        using var content = new StringContent("[]", Encoding.UTF8, type);
        await Problem.IsAsync(HttpStatusCode.UnsupportedMediaType, "application/json", await site.Caller.PostAsync(Site.Entries("home"), content));
    }

    [Fact]
    public async Task Send_NotUtf8_IsRefused()
    {
        using var content = new ByteArrayContent([.. "[\""u8, 0xC3, 0x28, .. "\"]"u8]);
        content.Headers.ContentType = new("application/json");
        await Problem.IsAsync(HttpStatusCode.BadRequest, "UTF-8", await site.Caller.PostAsync(Site.Entries("home"), content));
    }

    [Fact]
    public async Task Operation_NameTooLong_IsRefused() =>
        await Problem.IsAsync(HttpStatusCode.BadRequest, "operation", await site.Caller.GetAsync(Site.Entries(new string('x', 201))));

    // The reference is the ledger, which the phone runs.
    [Fact]
    public async Task Send_AnyOrderAndRepetition_GivesTheSetTheLedgerHas()
    {
        var trial = 0;
        await Gen.Select(Colliding.Array[0, 8].Array[1, 5], Gen.Int[1, 2]).SampleAsync(async (exchanges, times) =>
        {
            var operation = $"trial {Interlocked.Increment(ref trial)}";
            var given = exchanges.Select(x => Array.ConvertAll(x, e => e with { Operation = operation })).ToArray();
            var ledger = new Ledger();
            foreach (var exchange in given)
                ledger.Add(exchange);
            foreach (var exchange in Enumerable.Repeat(given.Reverse(), times).SelectMany(x => x))
                await site.SendAsync(operation, exchange);
            Assert.Equal(ledger.Entries, (await site.TakeAllAsync(operation, limit: 3)).Order());
        }, iter: 40, threads: 2);
    }

    // Whatever is sent, the answer is 200 or 400, and what was kept can be read again.
    [Fact]
    public async Task Send_AnyBytesOrDamagedJson_NeverBreaksTheServer()
    {
        var whole = EntryJson.WriteMany([Site.Entry(1, "fuzz"), Site.Entry(2, "fuzz", payload: """{"note":"d\u00e9j\u00e0 \ud83d\udc1d","a":[1,{"b":null}]}""")]);
        var parts = new[] { "{", "}", "[", "]", ",", ":", "\"", "\\", "\\ud800", "null", "1e999", "-", "\"id\"", "\"payload\":", "\u0000", "{\"a\":" };
        var damage = Gen.Select(Gen.Int[0, whole.Length], Gen.Int[0, 12], Gen.OneOf(
            Gen.Int[0, parts.Length - 1].Select(n => Encoding.UTF8.GetBytes(parts[n])), Gen.Byte.Array[0, 6]));
        var damaged = damage.Array[1, 4].Select(cuts => cuts.Aggregate(whole, (bytes, cut) =>
        {
            var (place, gone, put) = cut;
            var at = Math.Min(place, bytes.Length);
            return [.. bytes[..at], .. put, .. bytes[Math.Min(bytes.Length, at + gone)..]];
        }));
        await Gen.OneOf(damaged, Gen.Byte.Array[0, 60]).SampleAsync(async body =>
        {
            using var content = new ByteArrayContent(body);
            content.Headers.ContentType = new("application/json");
            var answer = await site.Caller.PostAsync(Site.Entries("fuzz"), content);
            Assert.True(answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.BadRequest, $"{answer.StatusCode} for {Convert.ToHexString(body)}");
        }, iter: 2_000, threads: 2);
        await site.TakeAllAsync("fuzz");
    }
}

public sealed class ExchangeTestsOnSqlite(Site site) : ExchangeTests(site), IClassFixture<Site>;

public sealed class ExchangeTestsOnPostgres(PostgresSite site) : ExchangeTests(site.Required()), IClassFixture<PostgresSite>;
