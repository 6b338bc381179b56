using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Text.Json;
using Foundress.Book.Journal;
using Foundress.PostgresForTests;
using Foundress.Server;
using Foundress.Storage;
using ServerLoad;

// A server with a very large operation: how long the due list, apiary pages and the first copy of one apiary take, with
// jars coming in meanwhile, and whether its memory is steady. Run with:
//   dotnet run -c Release --project bench/ServerLoad -- [--entries 1000000] [--colonies 10000] [--postgres] [--soak SECONDS]
// With --fleet SERVERS instead: how long so many server processes on one PostgreSQL take for the forecasts of all apiaries.
var count = Option("--entries", 1_000_000);
var colonies = Option("--colonies", 10_000);
var soak = Option("--soak", 0);
var folder = Directory.CreateTempSubdirectory("foundress-load-").FullName;
PostgresCluster? cluster = null;
try
{
    PostgresAddress? address = null;
    if (args.Contains("--postgres"))
    {
        cluster = await PostgresCluster.StartAsync(durable: true);
        address = await cluster.BookAsync();
    }

    var book = new LargeBook(DateOnly.FromDateTime(DateTime.Now));
    var options = new BookStoreOptions { BackupAtStart = false, Database = address };
    var from = Stopwatch.GetTimestamp();
    using (var store = await BookStore.OpenAsync(folder, options))
    {
        foreach (var some in book.Entries(colonies, count).Chunk(5_000))
            await store.AppendAsync("home", some);
    }

    Say($"{(address is null ? "SQLite" : "PostgreSQL")}: {count} entries of {colonies} colonies in {book.Apiaries.Count} apiaries, written in {Stopwatch.GetElapsedTime(from).TotalSeconds:F0} s");
    if (Option("--fleet", 0) is > 0 and var servers)
    {
        await Fleet.RunAsync(cluster ?? throw new InvalidOperationException("--fleet needs --postgres: servers share work through it."), address!, folder, servers, colonies, book.Apiaries.Count);
        return;
    }

    await using var server = await FoundressServer.StartAsync(new ServerOptions(0, folder, Demo: false, address), storage: options);
    using var caller = new HttpClient { BaseAddress = new UriBuilder(server.Address) { Host = "127.0.0.1", Path = "api/v1/operations/home/" }.Uri, Timeout = TimeSpan.FromMinutes(10) };
    var random = new Random(1);

    Say($"first due list, the whole book read: {await TimeAsync(() => GetAsync("due")):F0} ms; memory {Memory()}");
    var (due, page, write) = (new List<double>(), new List<double>(), new List<double>());
    for (var n = 0; n < 600; n++)
    {
        if (n % 10 == 0)
            write.Add(await TimeAsync(() => SendAsync(book.Jar())));
        due.Add(await TimeAsync(() => GetAsync("due")));
        page.Add(await TimeAsync(() => GetAsync($"apiaries/{book.Apiaries[random.Next(book.Apiaries.Count)]}")));
    }

    Print("due list, 200 lines, a jar sent before every tenth", due);
    Print("apiary page, any apiary", page);
    Print("a jar sent", write);

    var part = new List<double>();
    long bytes = 0, entries = 0;
    for (var n = 0; n < 10; n++)
    {
        var apiary = book.Apiaries[random.Next(book.Apiaries.Count)];
        part.Add(await TimeAsync(async () => (bytes, entries) = await PartAsync(apiary)));
    }

    Print($"first copy of one apiary, {entries} entries, {bytes / 1000} kB unpacked", part);
    Say($"memory {Memory()}");
    var end = Stopwatch.GetTimestamp();
    for (var minute = 1; Stopwatch.GetElapsedTime(end).TotalSeconds < soak; minute++)
    {
        var (asked, began) = (0, Stopwatch.GetTimestamp());
        while (Stopwatch.GetElapsedTime(began).TotalSeconds < 60)
        {
            await SendAsync(book.Jar());
            await GetAsync("due");
            await GetAsync($"apiaries/{book.Apiaries[random.Next(book.Apiaries.Count)]}");
            await PartAsync(book.Apiaries[random.Next(book.Apiaries.Count)]);
            asked++;
        }

        Say($"minute {minute}: {asked} rounds of send, due, page and copy; memory {Memory()}");
    }

    async Task GetAsync(string path)
    {
        using var answer = await caller.GetAsync(path);
        answer.EnsureSuccessStatusCode();
        await answer.Content.ReadAsByteArrayAsync();
    }

    async Task SendAsync(Entry entry)
    {
        using var content = new ByteArrayContent(EntryJson.WriteMany([entry]));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        using var answer = await caller.PostAsync("entries", content);
        answer.EnsureSuccessStatusCode();
    }

    async Task<(long Bytes, long Entries)> PartAsync(ApiaryId apiary)
    {
        var (size, held, cursor) = (0L, 0L, 0L);
        while (true)
        {
            var body = await caller.GetByteArrayAsync($"apiaries/{apiary}/entries?after={cursor}&limit=2000");
            using var json = JsonDocument.Parse(body);
            size += body.Length;
            held += json.RootElement.GetProperty("entries").GetArrayLength();
            cursor = json.RootElement.GetProperty("next").GetInt64();
            if (!json.RootElement.GetProperty("more").GetBoolean())
                return (size, held);
        }
    }
}
finally
{
    if (cluster is not null)
        await cluster.DisposeAsync();
    Directory.Delete(folder, recursive: true);
}

int Option(string name, int usual) => Array.IndexOf(args, name) is var place and >= 0 ? int.Parse(args[place + 1], NumberStyles.None, CultureInfo.InvariantCulture) : usual;

static async Task<double> TimeAsync(Func<Task> work)
{
    var from = Stopwatch.GetTimestamp();
    await work();
    return Stopwatch.GetElapsedTime(from).TotalMilliseconds;
}

static void Print(string what, List<double> times)
{
    times.Sort();
    Say($"{what}: middle {times[times.Count / 2]:F1} ms, p95 {times[times.Count * 95 / 100]:F1} ms, longest {times[^1]:F0} ms ({times.Count} times)");
}

static string Memory() => string.Create(CultureInfo.InvariantCulture, $"{Environment.WorkingSet / 1_000_000} MB, of it {GC.GetTotalMemory(forceFullCollection: true) / 1_000_000} MB in use");

static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
