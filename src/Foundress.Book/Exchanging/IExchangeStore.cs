using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>What a device remembers of its exchange with the server. A write that has returned is on the disk.</summary>
public interface IExchangeStore
{
    /// <summary>Entries the server has not been given yet.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="limit">At most so many, from 1.</param>
    Task<IReadOnlyList<Entry>> ReadPendingAsync(string operation, int limit);

    /// <summary>Takes entries off the list of those still to be given to the server.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="outcomes">Each entry with the server's reason for refusing it, or null when it was taken.</param>
    Task SettleAsync(string operation, IEnumerable<(EntryId Id, string? Refused)> outcomes);

    /// <summary>Puts every entry back on the list of those still to be given to the server.</summary>
    Task UnsettleAsync(string operation);

    /// <summary>Puts the entries that the server would not take back on the list.</summary>
    Task RetryRefusedAsync(string operation);

    /// <summary>A small setting, or null.</summary>
    Task<string?> GetAsync(string key);

    /// <summary>Keeps a small setting; null removes it.</summary>
    Task SetAsync(string key, string? value);
}
