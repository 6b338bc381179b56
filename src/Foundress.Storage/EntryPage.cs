using Foundress.Book.Journal;

namespace Foundress.Storage;

/// <summary>Some entries of one operation in the order they were committed.</summary>
/// <param name="Entries">The entries.</param>
/// <param name="Next">The cursor to read on from; the one that was given when there was nothing new.</param>
/// <param name="More">Whether there was more when this was read.</param>
/// <param name="Sequences">The place of each entry in the order of commit.</param>
public sealed record EntryPage(IReadOnlyList<Entry> Entries, long Next, bool More, IReadOnlyList<long> Sequences);
