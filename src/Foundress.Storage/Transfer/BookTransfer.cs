using Foundress.Storage.Model;

namespace Foundress.Storage.Transfer;

/// <summary>
/// Copies the whole book of a data folder into a PostgreSQL database and compares both. It may be cut off and run again: what
/// is there already is left as it is. The folder's book is only read.
/// </summary>
public static class BookTransfer
{
    private const int Batch = 2_000;

    /// <summary>Copies and compares.</summary>
    /// <param name="directory">The data folder, whose book no other program may have open.</param>
    /// <param name="options">How the store behaves, with the PostgreSQL database to copy into.</param>
    /// <param name="cancellation">Gives up; what was copied stays.</param>
    /// <returns>What became of each operation, by name.</returns>
    /// <exception cref="StorageException">One of the two cannot be used, or an entry did not arrive.</exception>
    public static async Task<IReadOnlyList<OperationTransfer>> RunAsync(
        string directory, BookStoreOptions options, CancellationToken cancellation = default)
    {
        var folder = DataFolder.At(directory);
        if (options.Database is not { } address)
            throw new ArgumentException("The options name no PostgreSQL database.", nameof(options));
        if (!File.Exists(folder.Database))
            throw new StorageException(StorageFault.Missing, folder.Path, $"There is no book in {folder.Path}. Nothing was copied. Name its folder with --data.");
        using var source = await BookStore.OpenAsync(directory, options with { Database = null, Alone = true }, cancellation);
        using var target = await BookStore.OpenAsync(directory, options with { TakesOver = true, BackupAtStart = false }, cancellation);
        var done = new List<OperationTransfer>();
        foreach (var operation in await source.OperationsAsync(cancellation))
        {
            var added = 0L;
            await foreach (var rows in PagesAsync(source, operation.Operation, cancellation))
                added += await target.AppendRowsAsync(operation.Operation, rows, cancellation);
            done.Add(await CompareAsync(source, target, operation.Operation, added, address, cancellation));
        }

        return done;
    }

    // Both are read again from what is stored, so that nothing of the copying is taken on trust.
    private static async Task<OperationTransfer> CompareAsync(
        BookStore source, BookStore target, string operation, long added, PostgresAddress address, CancellationToken cancellation)
    {
        var (here, there) = (new EntryDigest(), new EntryDigest());
        var different = new List<Guid>();
        await foreach (var rows in PagesAsync(source, operation, cancellation))
        {
            var found = await target.FindRowsAsync(operation, [.. rows.Select(row => row.Id)], cancellation);
            foreach (var row in rows)
            {
                if (!found.TryGetValue(row.Id, out var copy))
                {
                    throw new StorageException(
                        StorageFault.Disk, address.ToString(),
                        $"Entry {row.Id} of operation '{operation}' did not arrive in the PostgreSQL database {address}. The book in {source.Folder.Path} is unharmed; run it again.");
                }

                here.Add(row);
                there.Add(copy);
                if (copy.ToEntry() != row.ToEntry())
                    different.Add(row.Id);
            }
        }

        return new OperationTransfer(operation, here.Count, added, here.ToString(), there.ToString(), different);
    }

    private static async IAsyncEnumerable<List<StoredEntry>> PagesAsync(
        BookStore store, string operation, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        var cursor = 0L;
        while (await store.ReadRowsAsync(operation, cursor, Batch, cancellation) is { Count: > 0 } rows)
        {
            cursor = rows[^1].Sequence;
            yield return rows;
        }
    }
}
