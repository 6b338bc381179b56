using Foundress.Book;
using Foundress.Book.Journal;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary>A way to judge that is given for one command only.</summary>
internal static class MomentaryPolicy
{
    // Settings live in a book; this one holds nothing else and is never kept.
    internal static JudgingPolicy Of(PolicyRecord settings, KnowledgeBase knowledge, Surroundings around)
    {
        var book = new Ledger();
        var scribe = new Scribe("momentary", "command line", around.Device, new HybridClock(around.Time), new TimeOrderedIds(around.Time));
        book.Add([scribe.Write(settings)]);
        return JudgingPolicy.Of(book.State, knowledge);
    }
}
