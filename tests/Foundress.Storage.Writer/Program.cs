using Foundress.Book.Journal;
using Foundress.Storage;

// Adds entries for ever, three at a time, and prints each id once it has been acknowledged.
// Arguments: the data folder, and the name of the device. FOUNDRESS_DATABASE names a PostgreSQL database.
// With the device "work" it does what work is shared out there instead, prints the apiary of each piece once its result has
// been kept, and ends when there is nothing left to take.
var (directory, device) = (args[0], args[1]);
var clock = new HybridClock(TimeProvider.System);
var ids = new TimeOrderedIds(TimeProvider.System);
var database = Environment.GetEnvironmentVariable("FOUNDRESS_DATABASE") is { Length: > 0 } setting
    ? PostgresAddress.TryParse(setting, out var problem) ?? throw new ArgumentException(problem)
    : null;
using var store = await BookStore.OpenAsync(directory, new BookStoreOptions { Database = database, BackupAtStart = false });
if (device == "work")
{
    while (await store.Work!.TakeAsync("writer", TimeSpan.FromHours(1), most: 3) is { Count: > 0 } leases)
    {
        foreach (var lease in leases)
        {
            if (await store.Work.CompleteAsync(lease, $"result of {lease.Input}"))
                Console.WriteLine(lease.Key.Apiary);
        }
    }

    return;
}

while (true)
{
    var entries = Enumerable.Range(0, 3)
        .Select(_ => new Entry(new EntryId(ids.Next()), "home", "keeper", device, clock.Tick(), "jar", 1, """{"on":"2025-07-01"}"""))
        .ToArray();
    await store.AppendAsync("home", entries);
    foreach (var entry in entries)
        Console.WriteLine(entry.Id);
}
