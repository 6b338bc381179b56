using System.Diagnostics;
using System.Globalization;
using Foundress.PostgresForTests;
using Foundress.Storage.Work;

namespace Foundress.Bench;

/// <summary>What it costs to share work out, without the work.</summary>
internal static class WorkBench
{
    private const int Pieces = 10_000;
    private const int Workers = 3;

    public static async Task<IReadOnlyList<(string Way, TimeSpan Time)>> RunAsync(PostgresCluster cluster)
    {
        await using var book = await BenchBook.MakeAsync(cluster);
        using var store = await book.OpenAsync();
        var work = store.Work!;
        var items = Enumerable.Range(0, Pieces).Select(n => new WorkItem(
            new WorkKey("home", new Guid(n, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7), n.ToString("x64", CultureInfo.InvariantCulture), "1"), "{}")).ToArray();
        var from = Stopwatch.GetTimestamp();
        foreach (var some in items.Chunk(1_000))
            await work.EnqueueAsync(some);
        var asked = Stopwatch.GetElapsedTime(from);
        from = Stopwatch.GetTimestamp();
        await Task.WhenAll(Enumerable.Range(0, Workers).Select(n => Task.Run(async () =>
        {
            while (await work.TakeAsync($"worker {n}", TimeSpan.FromMinutes(10), most: 20) is { Count: > 0 } leases)
            {
                foreach (var lease in leases)
                    await work.CompleteAsync(lease, "{}");
            }
        })));
        return [("ask for 10,000 pieces of work", asked), ("3 workers take them, 20 at a time, and hand in", Stopwatch.GetElapsedTime(from))];
    }
}
