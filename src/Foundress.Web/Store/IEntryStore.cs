using Foundress.Book.Exchanging;
using Foundress.Book.Journal;

namespace Foundress.Web.Store;

/// <summary>The journal kept on this device. A write that has returned is on the disk.</summary>
/// <remarks>Every method throws <see cref="StoreException"/> when the device fails.</remarks>
public interface IEntryStore : IExchangeStore
{
    /// <summary>
    /// Keeps entries; those already held are passed over. Where one id was given to two entries, the one that
    /// <see cref="Book.Ledger.ComesBefore"/> names is kept, as in the ledger.
    /// </summary>
    /// <param name="operation">The operation they belong to.</param>
    /// <param name="entries">The entries.</param>
    /// <param name="pending">True when the server still has to be given them.</param>
    /// <param name="draft">The draft they were written from, which goes in the same step; null for none.</param>
    Task AppendAsync(string operation, IEnumerable<Entry> entries, bool pending, string? draft = null);

    /// <summary>What this device stored after a position, 0 for everything.</summary>
    Task<StoredEntries> ReadAfterAsync(string operation, int position);

    /// <summary>How many entries the server has not been given yet.</summary>
    Task<int> CountPendingAsync(string operation);

    /// <summary>How many entries the server would not take.</summary>
    Task<int> CountRefusedAsync(string operation);

    /// <summary>Erases an operation from this device. Only for the invented demo.</summary>
    Task ForgetAsync(string operation);

    /// <summary>Erases those entries of an operation from this device that the server holds. Others stay, also those it would not take.</summary>
    Task DropCopiedAsync(string operation);

    /// <summary>The setting already kept under a key; this value, then kept, if there was none.</summary>
    Task<string> FirstAsync(string key, string value);

    /// <summary>The draft of a form, or null.</summary>
    Task<string?> GetDraftAsync(string key);

    /// <summary>Keeps the draft of a form; null removes it.</summary>
    Task SetDraftAsync(string key, string? value);

    /// <summary>Tells this browser's other tabs that an operation has changed.</summary>
    void Tell(string operation);

    /// <summary>Calls back when another tab has changed an operation, with its name.</summary>
    void Listen(Action<string> changed);
}
