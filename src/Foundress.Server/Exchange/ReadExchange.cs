using Foundress.Book.Journal;

namespace Foundress.Server.Exchange;

/// <summary>An exchange once read.</summary>
/// <param name="Entries">What can be kept.</param>
/// <param name="Refused">What cannot.</param>
internal sealed record ReadExchange(IReadOnlyList<Entry> Entries, IReadOnlyList<RefusedEntry> Refused);
