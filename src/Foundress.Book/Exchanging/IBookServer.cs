using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>The server's side of the exchange, as a device sees it. Every call may be cut off anywhere and made again.</summary>
/// <remarks>Every method throws <see cref="ExchangeException"/> when the server cannot be reached or does not answer as it should.</remarks>
public interface IBookServer
{
    /// <summary>What the server says of itself.</summary>
    Task<AboutReply> AboutAsync();

    /// <summary>Gives entries to the server: all but the refused are kept when the answer comes. It knows entries by id.</summary>
    Task<PushReply> PushAsync(string operation, IReadOnlyList<Entry> entries);

    /// <summary>Takes entries from the server after a position in its own order, 0 for everything.</summary>
    Task<PulledEntries> PullAsync(string operation, long after);

    /// <summary>Takes entries of one apiary's part of the book after a position in the server's own order, 0 for everything.</summary>
    /// <returns>Null when the server knows no such apiary.</returns>
    Task<PulledEntries?> PullPartAsync(string operation, ApiaryId apiary, long after);
}
