using System.Diagnostics;
using System.Globalization;
using Foundress.Bench;
using Foundress.Book;
using Foundress.PostgresForTests;

// Times the long ways of the book, on both databases in one run. Run with: dotnet run -c Release --project bench/Foundress.Bench [ENTRIES]
// Best of three; compare runs on one computer only. PostgreSQL is a server of this program's own whose commits wait for the disk.
var count = args.Length > 0 ? int.Parse(args[0], NumberStyles.None, CultureInfo.InvariantCulture) : 100_000;
var entries = InventedBook.Entries(count);
Console.WriteLine($"{entries.Length} entries, {entries.Sum(entry => (long)entry.Payload.Length) / entries.Length} characters a payload");

var best = TimeSpan.MaxValue;
for (var n = 0; n < 3; n++)
{
    var from = Stopwatch.GetTimestamp();
    var ledger = new Ledger();
    ledger.Add(entries);
    GC.KeepAlive(ledger.State);
    best = TimeSpan.FromTicks(Math.Min(best.Ticks, Stopwatch.GetElapsedTime(from).Ticks));
}

Print("", "SQLite", "PostgreSQL", "ratio");
Print("replay in memory, fold included", Ms(best), "", "");
var file = await new StoreBench(entries, null).RunAsync();
if (PostgresPrograms.Missing is { } missing)
{
    Console.WriteLine(missing);
    foreach (var (way, time) in file)
        Print(way, Ms(time), "", "");
    return;
}

await using var cluster = await PostgresCluster.StartAsync(durable: true);
var server = await new StoreBench(entries, cluster).RunAsync();
foreach (var ((way, alone), (_, there)) in file.Zip(server))
    Print(way, Ms(alone), Ms(there), (there / alone).ToString("F1", CultureInfo.InvariantCulture));
foreach (var (way, time) in await WorkBench.RunAsync(cluster))
    Print(way, "", Ms(time), "");

static string Ms(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{time.TotalMilliseconds:F0} ms");

static void Print(string way, string file, string server, string ratio) =>
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{way,-44}{file,12}{server,14}{ratio,8}"));
