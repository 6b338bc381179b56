using Foundress.Book.Journal;

namespace Foundress.Web.Sync;

/// <summary>Entries taken from the server.</summary>
/// <param name="Entries">The entries.</param>
/// <param name="Next">The position to ask from next time.</param>
/// <param name="More">Whether there are more now.</param>
public sealed record PulledEntries(IReadOnlyList<Entry> Entries, long Next, bool More);
