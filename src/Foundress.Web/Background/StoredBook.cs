using Foundress.Book;
using Foundress.Web.Store;

namespace Foundress.Web.Background;

/// <summary>The book as the worker sees it: read from the device's store, where every record is before a page shows it.</summary>
/// <param name="store">The device's store.</param>
public sealed class StoredBook(IEntryStore store)
{
    private Ledger _ledger = new();
    private string? _operation;
    private int _position;

    /// <summary>The book of an operation.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="entries">How many entries the page holds: fewer than that must not be answered from.</param>
    /// <exception cref="StoreException">The store does not answer, or holds fewer entries than the page.</exception>
    public async Task<Ledger> ReadAsync(string operation, int entries)
    {
        if (operation != _operation)
            Forget(operation);
        await ReadOnAsync(operation);
        if (_ledger.Count > entries)
        {
            // The invented book may have been removed and made anew since.
            Forget(operation);
            await ReadOnAsync(operation);
        }

        return _ledger.Count >= entries
            ? _ledger
            : throw new StoreException(WorkTexts.FormatStoreBehind(_ledger.Count, entries));
    }

    private void Forget(string operation) => (_operation, _ledger, _position) = (operation, new Ledger(), 0);

    private async Task ReadOnAsync(string operation)
    {
        var stored = await store.ReadAfterAsync(operation, _position);
        _position = stored.Last;
        _ledger.Add(stored.Entries);
    }
}
