using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>A jar that counts (was not struck).</summary>
/// <param name="Entry">The entry that recorded it.</param>
/// <param name="Facts">What was recorded.</param>
/// <param name="Colony">The colony it came from, after any later correction; null for a loose jar.</param>
public sealed record Jar(Entry Entry, JarRecord Facts, ColonyId? Colony)
{
    /// <summary>The jar's own id: that of its entry.</summary>
    public EntryId Id => Entry.Id;
}
