using System.Globalization;
using System.Net;
using System.Text;
using Foundress.Book;
using Foundress.Book.Demo;
using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Foundress.Web.Sync;

namespace Foundress.Server.Tests;

/// <summary>Bodies packed both ways, and what a hostile one may do.</summary>
public class PackedExchangeTests(Site site, ITestOutputHelper output) : IClassFixture<Site>
{
    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Send_Packed_IsKeptByteForByte(string encoding)
    {
        var entries = Enumerable.Range(0, 40).Select(n => Site.Entry(n, encoding)).ToArray();
        var json = EntryJson.WriteMany(entries);
        using var content = Packing.Content(encoding == "gzip" ? Packing.Gzip(json) : Packing.Brotli(json), encoding);
        Assert.Equal(HttpStatusCode.OK, (await site.Caller.PostAsync(Site.Entries(encoding), content)).StatusCode);
        Assert.Equal(entries, await site.TakeAllAsync(encoding));
    }

    // 8 MB and one byte of spaces pack to a few kilobytes.
    [Theory]
    [InlineData("gzip", 1)]
    [InlineData("br", 1)]
    [InlineData("gzip", 200_000_000)]
    public async Task Send_BodyThatUnpacksToMoreThanTheMost_IsRefused(string encoding, int more)
    {
        var packed = encoding == "gzip" ? Bomb(more) : Packing.Brotli(Encoding.ASCII.GetBytes(new string(' ', FoundressServer.GreatestBody + more)));
        output.WriteLine($"{packed.Length:N0} bytes that unpack to {FoundressServer.GreatestBody + (long)more:N0}");
        using var content = Packing.Content(packed, encoding);
        await Problem.IsAsync(HttpStatusCode.RequestEntityTooLarge, "The most is 8 MB", await site.Caller.PostAsync(Site.Entries("bomb"), content));
        Assert.Empty(await site.TakeAllAsync("bomb"));
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Send_PackedBodyCutOffOrDamaged_KeepsNothing(string encoding)
    {
        var json = EntryJson.WriteMany([.. Enumerable.Range(0, 100).Select(n => Site.Entry(n, "cut"))]);
        var packed = encoding == "gzip" ? Packing.Gzip(json) : Packing.Brotli(json);
        foreach (var bytes in new[] { packed[..(packed.Length / 2)], [.. packed[..20], .. new byte[40], .. packed[60..]], Encoding.ASCII.GetBytes("[]") })
        {
            using var content = Packing.Content(bytes, encoding);
            Assert.Equal(HttpStatusCode.BadRequest, (await site.Caller.PostAsync(Site.Entries("cut"), content)).StatusCode);
        }

        Assert.Empty(await site.TakeAllAsync("cut"));
    }

    [Theory]
    [InlineData("zstd")]
    [InlineData("gzip, gzip")]
    public async Task Send_UnknownPacking_IsNamed(string encoding)
    {
        using var content = Site.Json("[]");
        content.Headers.TryAddWithoutValidation("Content-Encoding", encoding);
        await Problem.IsAsync(HttpStatusCode.UnsupportedMediaType, encoding, await site.Caller.PostAsync(Site.Entries("home"), content));
    }

    [Theory]
    [InlineData("api/v1/operations/home/entries", true)]
    [InlineData("api/v1/about", false)]
    [InlineData("health/live", false)]
    public async Task Answer_PackedOnlyWhereItHoldsRecords(string path, bool packed)
    {
        await site.SendAsync("home", [.. Enumerable.Range(0, 40).Select(n => Site.Entry(n))]);
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Add("Accept-Encoding", "gzip, br");
        using var answer = await site.Caller.SendAsync(request);
        Assert.Equal(packed ? ["br"] : [], answer.Content.Headers.ContentEncoding);
    }

    [Fact]
    public async Task Exchange_TenThousandEntriesOfADemoBook_TravelsInAFractionOfTheBytes()
    {
        var counter = new ByteCounter(new SocketsHttpHandler());
        using var http = new HttpClient(counter) { BaseAddress = site.Caller.BaseAddress };
        var entries = TenThousand();
        var plain = entries.Chunk(ExchangeRound.Batch).Sum(part => (long)EntryJson.WriteMany(part).Length);
        var server = new BookServer(http, new Packing());
        foreach (var part in entries.Chunk(ExchangeRound.Batch))
            Assert.Empty((await server.PushAsync("big", part)).Refused);
        var sent = counter.Sent;
        var back = new Ledger();
        var after = 0L;
        long unpacked = 0, taken = 0;
        while (true)
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, $"{Site.Entries("big")}?after={after}&limit=500");
            request.Headers.Add("Accept-Encoding", "gzip, br");
            using var answer = await http.SendAsync(request);
            var packed = await answer.Content.ReadAsByteArrayAsync();
            taken += packed.Length;
            using var stream = new System.IO.Compression.BrotliStream(new MemoryStream(packed), System.IO.Compression.CompressionMode.Decompress);
            using var whole = new MemoryStream();
            await stream.CopyToAsync(whole);
            unpacked += whole.Length;
            using var page = System.Text.Json.JsonDocument.Parse(whole.ToArray());
            back.Add(page.RootElement.GetProperty("entries").EnumerateArray().Select(EntryJson.Read).ToArray());
            after = page.RootElement.GetProperty("next").GetInt64();
            if (!page.RootElement.GetProperty("more").GetBoolean())
                break;
        }

        var reference = new Ledger();
        reference.Add(entries);
        Assert.Equal(reference.Entries, back.Entries);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{entries.Length:N0} entries: sent {plain:N0} bytes unpacked, {sent:N0} with gzip; taken {unpacked:N0} unpacked, {taken:N0} with Brotli"));
        Assert.True(sent < plain / 4 && taken < unpacked / 4, "Packing saves less than three quarters.");
    }

    // Ten years of demo books, each with ids of its own.
    private static Entry[] TenThousand()
    {
        var all = new List<Entry>();
        for (var seed = 1UL; all.Count < 10_000; seed++)
            all.AddRange(DemoBook.Entries(Foundress.Knowledge.KnowledgeBase.Load(), seed, new DateOnly(2026, 6, 1)).Select(entry => entry with { Operation = "big" }));
        return [.. all.Take(10_000)];
    }

    private static byte[] Bomb(int more)
    {
        using var result = new MemoryStream();
        using (var stream = new System.IO.Compression.GZipStream(result, System.IO.Compression.CompressionLevel.Optimal))
        {
            var block = new byte[1_000_000];
            Array.Fill(block, (byte)' ');
            for (var left = FoundressServer.GreatestBody + (long)more; left > 0; left -= block.Length)
                stream.Write(block, 0, (int)Math.Min(left, block.Length));
        }

        return result.ToArray();
    }

    private sealed class ByteCounter(HttpMessageHandler inner) : DelegatingHandler(inner)
    {
        public long Sent { get; private set; }

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            if (request.Content is not null)
                Sent += (await request.Content.ReadAsByteArrayAsync(cancellationToken)).Length;
            return await base.SendAsync(request, cancellationToken);
        }
    }
}
