using Foundress.Book.Journal;

namespace Foundress.Web.Store;

/// <summary>The journal kept on this device. A write that has returned is on the disk.</summary>
/// <remarks>Every method throws <see cref="StoreException"/> when the device fails.</remarks>
public interface IEntryStore
{
    /// <summary>Keeps entries; those already held are passed over.</summary>
    /// <param name="operation">The operation they belong to.</param>
    /// <param name="entries">The entries.</param>
    /// <param name="pending">True when the server still has to be given them.</param>
    Task AppendAsync(string operation, IEnumerable<Entry> entries, bool pending);

    /// <summary>What this device stored after a position, 0 for everything.</summary>
    Task<StoredEntries> ReadAfterAsync(string operation, int position);

    /// <summary>Entries the server has not been given yet.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="limit">At most so many, from 1.</param>
    Task<IReadOnlyList<Entry>> ReadPendingAsync(string operation, int limit);

    /// <summary>How many entries the server has not been given yet.</summary>
    Task<int> CountPendingAsync(string operation);

    /// <summary>How many entries the server would not take.</summary>
    Task<int> CountRefusedAsync(string operation);

    /// <summary>Takes entries off the list of those still to be given to the server.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="outcomes">Each entry with the server's reason for refusing it, or null when it was taken.</param>
    Task SettleAsync(string operation, IEnumerable<(EntryId Id, string? Refused)> outcomes);

    /// <summary>Puts every entry back on the list of those still to be given to the server.</summary>
    Task UnsettleAsync(string operation);

    /// <summary>Erases an operation from this device. Only for the invented demo.</summary>
    Task ForgetAsync(string operation);

    /// <summary>A small setting, or null.</summary>
    Task<string?> GetAsync(string key);

    /// <summary>Keeps a small setting; null removes it.</summary>
    Task SetAsync(string key, string? value);

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
