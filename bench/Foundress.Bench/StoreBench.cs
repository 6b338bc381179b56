using System.Diagnostics;
using Foundress.Book.Journal;
using Foundress.PostgresForTests;
using Foundress.Storage;

namespace Foundress.Bench;

/// <summary>The long ways of the store, on one database.</summary>
internal sealed class StoreBench(Entry[] entries, PostgresCluster? cluster)
{
    private const int Writers = 4;

    /// <summary>Times each way, best of three.</summary>
    public async Task<IReadOnlyList<(string Way, TimeSpan Best)>> RunAsync()
    {
        var found = new List<(string, TimeSpan)>
        {
            ("add to an empty store, 500 a commit", await BestAsync(store => AddAsync(store, "home", entries, 500))),
            ("the same by 4 writers, an operation each", await BestAsync(store => Task.WhenAll(
                entries.Chunk(entries.Length / Writers).Take(Writers)
                    .Select((part, n) => Task.Run(() => AddAsync(store, $"of {n}", Array.ConvertAll(part, entry => entry with { Operation = $"of {n}" }), 500)))))),
            ("add 2,000 of them one a commit", await BestAsync(store => AddAsync(store, "home", entries[..2_000], 1))),
        };
        await using var full = await BenchBook.MakeAsync(cluster);
        using (var store = await full.OpenAsync())
        {
            await store.AppendAsync("home", entries);
            found.Add(("send again what is known, 500 a commit", await BestAsync(() => AddAsync(store, "home", entries, 500))));
            found.Add(("read all", await BestAsync(async () =>
            {
                await foreach (var entry in store.ReadAllAsync("home"))
                    GC.KeepAlive(entry);
            })));
            found.Add(("count the operations (ready, about)", await BestAsync(() => store.OperationsAsync())));
            found.Add(("back up", await BestAsync(async () => File.Delete((await store.BackupAsync()).File))));
        }

        found.Add(("open, check included", await BestAsync(async () => (await full.OpenAsync()).Dispose())));
        return found;
    }

    private static async Task AddAsync(BookStore store, string operation, Entry[] entries, int together)
    {
        foreach (var chunk in entries.Chunk(together))
            await store.AppendAsync(operation, chunk);
    }

    private async Task<TimeSpan> BestAsync(Func<BookStore, Task> work)
    {
        var best = TimeSpan.MaxValue;
        for (var n = 0; n < 3; n++)
        {
            await using var book = await BenchBook.MakeAsync(cluster);
            using var store = await book.OpenAsync();
            best = TimeSpan.FromTicks(Math.Min(best.Ticks, (await TimeAsync(() => work(store))).Ticks));
        }

        return best;
    }

    private static async Task<TimeSpan> BestAsync(Func<Task> work)
    {
        var best = TimeSpan.MaxValue;
        for (var n = 0; n < 3; n++)
            best = TimeSpan.FromTicks(Math.Min(best.Ticks, (await TimeAsync(work)).Ticks));
        return best;
    }

    private static async Task<TimeSpan> TimeAsync(Func<Task> work)
    {
        var from = Stopwatch.GetTimestamp();
        await work();
        return Stopwatch.GetElapsedTime(from);
    }
}
