using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Knowledge;

namespace Foundress.Server.Demo;

/// <summary>The invented records that come with the program.</summary>
public sealed class InventedBook : IDemoBook
{
    /// <inheritdoc/>
    public ulong Seed => DemoBook.DefaultSeed;

    /// <inheritdoc/>
    public IReadOnlyList<Entry> Entries(DateOnly today) => DemoBook.Entries(KnowledgeBase.Load(), Seed, today);
}
