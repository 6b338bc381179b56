using System.Diagnostics;
using System.Globalization;
using Foundress.Bench;
using Foundress.Book;
using Foundress.Storage;

// Times the long ways of the book. Run with: dotnet run -c Release --project bench/Foundress.Bench [ENTRIES]
// Best of three; compare runs on one computer only.
var count = args.Length > 0 ? int.Parse(args[0], NumberStyles.None, CultureInfo.InvariantCulture) : 100_000;
var entries = InventedBook.Entries(count);
Console.WriteLine($"{entries.Length} entries, {entries.Sum(entry => (long)entry.Payload.Length) / entries.Length} characters a payload");

Best("replay in memory, fold included", () =>
{
    var ledger = new Ledger();
    ledger.Add(entries);
    return ledger.State;
});

await BestAsync("add to an empty store, 500 a commit", async () =>
{
    using var folder = new BenchFolder();
    using var store = await BookStore.OpenAsync(folder.Path);
    foreach (var chunk in entries.Chunk(500))
        await store.AppendAsync("home", chunk);
});

using var full = new BenchFolder();
using (var store = await BookStore.OpenAsync(full.Path))
{
    await store.AppendAsync("home", entries);
    await BestAsync("send again what is known, 500 a commit", async () =>
    {
        foreach (var chunk in entries.Chunk(500))
            await store.AppendAsync("home", chunk);
    });
    await BestAsync("read all", async () =>
    {
        await foreach (var entry in store.ReadAllAsync("home"))
            GC.KeepAlive(entry);
    });
    await BestAsync("back up", async () => File.Delete((await store.BackupAsync()).File));
}

await BestAsync("open, check included", async () =>
{
    using var store = await BookStore.OpenAsync(full.Path, new BookStoreOptions { BackupAtStart = false });
});

static void Best<T>(string name, Func<T> work)
{
    var best = TimeSpan.MaxValue;
    for (var n = 0; n < 3; n++)
    {
        var from = Stopwatch.GetTimestamp();
        GC.KeepAlive(work());
        best = TimeSpan.FromTicks(Math.Min(best.Ticks, Stopwatch.GetElapsedTime(from).Ticks));
    }

    Print(name, best);
}

static async Task BestAsync(string name, Func<Task> work)
{
    var best = TimeSpan.MaxValue;
    for (var n = 0; n < 3; n++)
    {
        var from = Stopwatch.GetTimestamp();
        await work();
        best = TimeSpan.FromTicks(Math.Min(best.Ticks, Stopwatch.GetElapsedTime(from).Ticks));
    }

    Print(name, best);
}

static void Print(string name, TimeSpan best) =>
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-44}{best.TotalMilliseconds,10:F0} ms"));
