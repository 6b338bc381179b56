using Foundress.Book.Journal;
using Foundress.Storage;

// Adds entries for ever, three at a time, and prints each id once it has been acknowledged.
// Arguments: the data folder, and the name of the device. FOUNDRESS_DATABASE names a PostgreSQL database.
var (directory, device) = (args[0], args[1]);
var clock = new HybridClock(TimeProvider.System);
var ids = new TimeOrderedIds(TimeProvider.System);
var database = Environment.GetEnvironmentVariable("FOUNDRESS_DATABASE") is { Length: > 0 } setting
    ? PostgresAddress.TryParse(setting, out var problem) ?? throw new ArgumentException(problem)
    : null;
using var store = await BookStore.OpenAsync(directory, new BookStoreOptions { Database = database, BackupAtStart = false });
while (true)
{
    var entries = Enumerable.Range(0, 3)
        .Select(_ => new Entry(new EntryId(ids.Next()), "home", "keeper", device, clock.Tick(), "jar", 1, """{"on":"2025-07-01"}"""))
        .ToArray();
    await store.AppendAsync("home", entries);
    foreach (var entry in entries)
        Console.WriteLine(entry.Id);
}
