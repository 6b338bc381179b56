using Foundress.Book;
using Foundress.Book.Journal;
using Foundress.Storage;

namespace Foundress.Server.Endpoints;

/// <summary>Reads an operation's whole book for an answer.</summary>
internal static class StoredLedger
{
    internal static async Task<Ledger> ReadAsync(BookStore store, string operation, CancellationToken cancellation)
    {
        var entries = new List<Entry>();
        await foreach (var entry in store.ReadAllAsync(operation, cancellation))
            entries.Add(entry);
        var ledger = new Ledger();
        ledger.Add(entries);
        return ledger;
    }
}
