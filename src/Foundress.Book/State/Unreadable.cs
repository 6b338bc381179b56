using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>An entry that is kept but does not count, and why.</summary>
/// <param name="Entry">The entry.</param>
public sealed record Unreadable(Entry Entry)
{
    /// <summary>What is wrong with it, in the language of the reader who asks: the book may be read by several.</summary>
    public string Problem => ReadEntry.ProblemOf(Entry) ?? string.Empty;

    /// <summary>Whether it was written by a newer version of the program; otherwise its payload does not fit its kind.</summary>
    public bool IsNewer => RecordKinds.IsNewer(Entry.Kind, Entry.Schema);
}
