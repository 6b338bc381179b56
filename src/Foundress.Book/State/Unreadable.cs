using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>An entry that is kept but does not count, and why.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Problem">What is wrong with it, for the reader.</param>
public sealed record Unreadable(Entry Entry, string Problem)
{
    /// <summary>Whether it was written by a newer version of the program; otherwise its payload does not fit its kind.</summary>
    public bool IsNewer => RecordKinds.IsNewer(Entry.Kind, Entry.Schema);
}
