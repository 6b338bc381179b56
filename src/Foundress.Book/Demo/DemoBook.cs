using Foundress.Book.Journal;
using Foundress.Knowledge;

namespace Foundress.Book.Demo;

/// <summary>
/// An invented keeper's book: three apiaries, about 45 colonies, two seasons of records. Every name and number in it is made
/// up from a seed; it shows what the program does and serves no other purpose.
/// </summary>
public static class DemoBook
{
    /// <summary>The seed used when none is given; printed wherever the demo is loaded.</summary>
    public const ulong DefaultSeed = 4711;

    /// <summary>The invented entries, up to a day.</summary>
    /// <param name="knowledge">Methods and rules the invented rounds follow.</param>
    /// <param name="seed">The same seed and day always give the same entries.</param>
    /// <param name="today">The last day of the records; the second season is the one this day falls in.</param>
    public static IReadOnlyList<Entry> Entries(KnowledgeBase knowledge, ulong seed, DateOnly today) =>
        new DemoWriter(knowledge, seed, today).Write();
}
