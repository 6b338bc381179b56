using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>Entries taken from the server.</summary>
/// <param name="Entries">The entries.</param>
/// <param name="Next">The position to ask from next time.</param>
/// <param name="More">Whether there are more now.</param>
/// <param name="Incarnation">The life of the server's book that the position holds in; null when the server names none.</param>
/// <param name="Members">What the entries are a part of (<see cref="Parts.BookParts.MembersOf"/>); null for the whole book.</param>
public sealed record PulledEntries(IReadOnlyList<Entry> Entries, long Next, bool More, string? Incarnation = null, string? Members = null);
