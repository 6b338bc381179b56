using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;
using Microsoft.Extensions.Time.Testing;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests;

/// <summary>A small book under construction: numbered ids, a hand-moved clock.</summary>
internal sealed class TestBook
{
    private readonly Scribe _scribe;

    public TestBook(string device = "device-a", int seed = 1)
    {
        Time = new FakeTimeProvider(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));
        Ids = new NumberedIds(seed);
        _scribe = new Scribe("home", "tester", device, new HybridClock(Time), Ids);
    }

    public static KnowledgeBase Knowledge => KnowledgeBase.Load();

    public static DateOnly Today { get; } = new(2026, 8, 20);

    public FakeTimeProvider Time { get; }

    public NumberedIds Ids { get; }

    public Ledger Ledger { get; } = new();

    public BookState State => Ledger.State;

    public Entry Write(Record record)
    {
        Time.Advance(TimeSpan.FromSeconds(1));
        var entry = _scribe.Write(record);
        Ledger.Add([entry]);
        return entry;
    }

    public ApiaryId Apiary(string name, double? latitude = 50)
    {
        var id = new ApiaryId(Ids.Next());
        Write(new ApiaryRecord(id, name, latitude));
        return id;
    }

    public ColonyId Colony(ApiaryId apiary, string name, DateOnly? on = null)
    {
        var id = new ColonyId(Ids.Next());
        Write(new ColonyRecord(id, name, apiary, on));
        return id;
    }

    public Entry Jar(ColonyId? colony, DateOnly on, int mites, int bees = 300, string method = "alcohol-wash", RoundId? round = null) =>
        Write(new JarRecord(on, method, [mites], JarBees.Counted(bees), colony, round));

    public Entry Strike(Entry entry, string reason = "typed wrongly") => Write(new Strike(entry.Id, reason));
}
