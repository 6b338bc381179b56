using Foundress.Book.Journal;

namespace Foundress.Book.Histories;

/// <summary>Something an entry said that no longer holds, because a later entry says otherwise. Both stay in the book.</summary>
/// <param name="Field">The payload's field, for example <c>name</c>; null when the whole record was replaced.</param>
/// <param name="Now">What is said instead, as it stands in the later payload; null when the whole record was replaced.</param>
/// <param name="By">The later entry.</param>
/// <param name="OtherDevice">
/// Whether it was written on another device. Then its author may not have seen what it took the place of: both may have been
/// without a network.
/// </param>
public sealed record Superseded(string? Field, string? Now, Entry By, bool OtherDevice);
