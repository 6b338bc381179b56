using Foundress.Book.Journal;
using Foundress.Book.Records;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.State;

public sealed class HappeningTests
{
    private static readonly DateOnly June = new(2026, 6, 1);

    [Fact]
    public void HappeningsOf_WrittenInAnyOrder_AreByDay()
    {
        var book = new TestBook();
        var colony = book.Colony(book.Apiary("Orchard"), "1");
        book.Write(new QueenRecord(colony, June.AddDays(24), QueenEvent.Released));
        book.Write(new QueenRecord(colony, June, QueenEvent.Caged));
        book.Write(new BroodRemoved(colony, June.AddDays(3), RemovedBrood.Drone, 0.8));
        book.Write(new ColonyBegan(colony, June.AddDays(-30), ColonyBeginning.Nucleus));

        Assert.Equal([-30, 0, 3, 24], book.State.HappeningsOf(colony).Select(one => one.On.DayNumber - June.DayNumber));
        Assert.Equal(5, book.State.EntriesOf(colony).Count);
    }

    [Fact]
    public void HappeningsOf_SplitsAndUnions_AreTheMattersOfBothColonies()
    {
        var book = new TestBook();
        var mother = book.Colony(book.Apiary("Orchard"), "1");
        var child = new ColonyId(book.Ids.Next());
        book.Write(new ColonySplit(mother, child, "1b", June, 4, 2));
        book.Write(new ColoniesUnited(child, mother, June.AddDays(90)));

        Assert.Equal(book.State.HappeningsOf(mother), book.State.HappeningsOf(child));
        Assert.Equal(2, book.State.HappeningsOf(mother).Count);
    }

    [Fact]
    public void HappeningsOf_StruckEntry_IsOutAndInAgain()
    {
        var book = new TestBook();
        var colony = book.Colony(book.Apiary("Orchard"), "1");
        var strike = book.Strike(book.Write(new QueenRecord(colony, June, QueenEvent.Lost)));
        Assert.Empty(book.State.HappeningsOf(colony));
        book.Strike(strike, "she was gone after all");
        Assert.Single(book.State.HappeningsOf(colony));
    }

    [Fact]
    public void Payload_EveryNewKind_ComesBackAsItWasWritten()
    {
        var colony = new ColonyId(new Guid("018f2f5e-0000-7000-8000-000000000001"));
        Record[] records =
        [
            new QueenRecord(colony, June, QueenEvent.Swarmed, 0.5, "prime swarm"),
            new ColonyBegan(colony, June, ColonyBeginning.Package, 1.4, 4.5, 0.5, "from the south"),
            new BroodRemoved(colony, June, RemovedBrood.Drone, 0.75, "one frame"),
        ];
        Assert.All(records, record => Assert.Equal(record, RecordJson.TryRead(RecordKinds.Of(record), RecordJson.Write(record), out _)));
        Assert.Equal(["queen", "colony-began", "brood-removed"], records.Select(RecordKinds.Of));
        Assert.Equal("""{"colony":"018f2f5e-0000-7000-8000-000000000001","on":"2026-06-01","event":"Swarmed","shareOfBees":0.5,"note":"prime swarm"}""", RecordJson.Write(records[0]));
    }
}
