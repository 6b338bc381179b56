using Foundress.Book.Journal;
using Foundress.Storage.Model;
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
    public async Task<IReadOnlyDictionary<EntryId, Entry>> HeldAsync(
        string operation, IReadOnlyCollection<EntryId> ids, CancellationToken cancellation = default) =>
        (await FindRowsAsync(operation, [.. ids.Select(id => id.Value).Distinct()], cancellation))
            .ToDictionary(row => new EntryId(row.Key), row => row.Value.ToEntry());

    /// <summary>Whether an operation holds entries that were written on a device.</summary>
    public Task<bool> HasDeviceAsync(string operation, string device, CancellationToken cancellation = default) =>
        _database.GuardAsync(async () =>
        {
            await using var context = _database.Open();
            return await context.Entries.AnyAsync(e => e.Operation == operation && e.Device == device, cancellation);
        });
}
