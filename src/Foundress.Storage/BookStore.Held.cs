using Foundress.Book.Journal;
using Foundress.Storage.Model;
using Foundress.Storage.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage;

/// <summary>Looking up what is held, for those who must judge entries before they are added.</summary>
public sealed partial class BookStore
{
    /// <summary>The entries of an operation that are held under ids.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="ids">The ids asked about.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>Those of the ids that are held, with their entries.</returns>
    public Task<IReadOnlyDictionary<EntryId, Entry>> HeldAsync(
        string operation, IReadOnlyCollection<EntryId> ids, CancellationToken cancellation = default) =>
        SqliteErrors.GuardAsync<IReadOnlyDictionary<EntryId, Entry>>(Folder, async () =>
        {
            await using var context = _database.Open();
            var held = new Dictionary<EntryId, Entry>();
            foreach (var batch in ids.Chunk(LookUp))
            {
                var wanted = Array.ConvertAll(batch, id => id.Value);
                await foreach (var row in context.Entries.AsNoTracking().Where(e => e.Operation == operation && wanted.Contains(e.Id)).AsAsyncEnumerable().WithCancellation(cancellation))
                    held[new EntryId(row.Id)] = row.ToEntry();
            }

            return held;
        });

    /// <summary>Whether an operation holds entries that were written on a device.</summary>
    public Task<bool> HasDeviceAsync(string operation, string device, CancellationToken cancellation = default) =>
        SqliteErrors.GuardAsync(Folder, async () =>
        {
            await using var context = _database.Open();
            return await context.Entries.AnyAsync(e => e.Operation == operation && e.Device == device, cancellation);
        });
}
