using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.State;

public sealed class LedgerTests
{
    private static readonly DateOnly June = new(2026, 6, 1);

    [Fact]
    public void Add_SameEntriesAgain_ChangesNothing()
    {
        var book = new TestBook();
        book.Jar(book.Colony(book.Apiary("Orchard"), "1"), June, 9);
        var before = Snapshot.Of(book.State);
        Assert.Empty(book.Ledger.Add([.. book.Ledger.Entries]));
        Assert.Equal(before, Snapshot.Of(book.State));
    }

    [Fact]
    public void State_TwoChangesOfOneField_TheLaterHolds()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        book.Write(new ApiaryRecord(apiary, Name: "Old orchard"));
        book.Write(new ApiaryRecord(apiary, Latitude: -35));
        var state = book.State.Apiaries[apiary];
        Assert.Equal("Old orchard", state.Name);
        Assert.Equal(-35, state.Latitude);
        Assert.Equal(3, book.Ledger.Count);
    }

    [Fact]
    public void Strike_Jar_NoLongerCountsButStaysInTheBook()
    {
        var book = new TestBook();
        var colony = book.Colony(book.Apiary("Orchard"), "1");
        var jar = book.Jar(colony, June, 90);
        book.Strike(jar, "count was 9");
        Assert.Empty(book.State.JarsOf(colony));
        Assert.Contains(jar, book.State.EntriesOf(colony));
        Assert.Equal("count was 9", book.State.Struck[jar.Id].Reason);
    }

    [Fact]
    public void Strike_OfAStrike_BringsTheEntryBack()
    {
        var book = new TestBook();
        var colony = book.Colony(book.Apiary("Orchard"), "1");
        var strike = book.Strike(book.Jar(colony, June, 9));
        Assert.Empty(book.State.JarsOf(colony));
        var second = book.Strike(strike, "it was right");
        Assert.Single(book.State.JarsOf(colony));
        book.Strike(second, "no, it was wrong");
        Assert.Empty(book.State.JarsOf(colony));
    }

    [Fact]
    public void Colony_MovedSplitUnited_IsWhereTheDatesSay()
    {
        var book = new TestBook();
        var orchard = book.Apiary("Orchard");
        var heath = book.Apiary("Heath");
        var mother = book.Colony(orchard, "1", new DateOnly(2026, 4, 1));
        book.Write(new ColonyMoved(mother, heath, new DateOnly(2026, 7, 1)));
        var child = new ColonyId(book.Ids.Next());
        book.Write(new ColonySplit(mother, child, "1b", new DateOnly(2026, 5, 10)));
        book.Write(new ColonyMoved(child, heath, new DateOnly(2026, 8, 1)));
        book.Write(new ColoniesUnited(child, mother, new DateOnly(2026, 9, 1)));

        Assert.Equal(orchard, book.State.Colonies[mother].ApiaryOn(June));
        Assert.Equal(heath, book.State.Colonies[mother].Apiary);
        Assert.Equal(orchard, book.State.Colonies[child].ApiaryOn(June));
        Assert.Equal(heath, book.State.Colonies[child].ApiaryOn(new DateOnly(2026, 8, 15)));
        Assert.Equal(["1", "1b"], book.State.ColoniesIn(orchard, June).Select(c => c.Name));
        Assert.Equal(["1"], book.State.ColoniesIn(heath, new DateOnly(2026, 9, 2)).Select(c => c.Name));
    }

    [Fact]
    public void Jar_KeptLooseThenPlaced_BelongsToTheColony()
    {
        var book = new TestBook();
        var colony = book.Colony(book.Apiary("Orchard"), "1");
        var jar = book.Jar(null, June, 9);
        Assert.Single(book.State.LooseJars);
        book.Write(new JarPlaced(jar.Id, colony));
        Assert.Empty(book.State.LooseJars);
        Assert.Equal(jar.Id, Assert.Single(book.State.JarsOf(colony)).Id);
    }

    [Fact]
    public void Jar_PlacedThenStruck_StaysInTheColonysHistory()
    {
        var book = new TestBook();
        var colony = book.Colony(book.Apiary("Orchard"), "1");
        var jar = book.Jar(null, June, 9);
        book.Write(new JarPlaced(jar.Id, colony));
        book.Strike(jar);
        Assert.Empty(book.State.JarsOf(colony));
        Assert.Equal(jar, Assert.Single(book.State.EntriesOf(colony), entry => entry.Kind == RecordKinds.Jar));
        Assert.Equal(book.State.EntriesOf(colony).Order(), book.State.EntriesOf(colony));
    }

    [Fact]
    public void State_UnknownKindNewerFormAndBrokenPayload_AreKeptAndListed()
    {
        var book = new TestBook();
        var colony = book.Colony(book.Apiary("Orchard"), "1");
        var jar = book.Jar(colony, June, 9);
        Entry[] strangers =
        [
            jar with { Id = new EntryId(book.Ids.Next()), Kind = "brood-disease" },
            jar with { Id = new EntryId(book.Ids.Next()), Schema = RecordKinds.CurrentSchema + 1 },
            jar with { Id = new EntryId(book.Ids.Next()), Payload = """{"on":"yesterday"}""" },
        ];
        book.Ledger.Add(strangers);
        Assert.Single(book.State.JarsOf(colony));
        Assert.Equal(strangers.Select(e => e.Id), book.State.Unreadable.Select(u => u.Entry.Id));
        Assert.All(book.State.Unreadable, u => Assert.NotEmpty(u.Problem));
        Assert.Equal([true, true, false], book.State.Unreadable.Select(u => u.IsNewer));
        // They show in the history of the colony they name.
        Assert.Equal([jar, .. strangers[..2]], book.State.EntriesOf(colony).Skip(1));
        Assert.Equal(strangers, book.Ledger.Entries.Where(e => strangers.Contains(e)));
    }

    [Fact]
    public void Add_OneIdForTwoEntries_EveryBookKeepsTheSameOne()
    {
        var book = new TestBook();
        var one = book.Jar(null, June, 9);
        var other = one with { Payload = one.Payload.Replace("[9]", "[10]", StringComparison.Ordinal) };
        var first = new Ledger();
        first.Add([one]);
        first.Add([other]);
        var second = new Ledger();
        second.Add([other]);
        second.Add([one]);
        Assert.Equal(first.Entries, second.Entries);
    }

    [Fact]
    public void Round_ColonySkipped_NextReserveStandsIn()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        var colonies = Enumerable.Range(1, 5).Select(n => book.Colony(apiary, $"{n}")).ToArray();
        var round = new RoundId(book.Ids.Next());
        book.Write(new RoundRecord(round, June, "after the peak", "alcohol-wash", "three", "1",
            [new ApiaryDraw(apiary, colonies[..3], colonies[3..])]));
        book.Jar(colonies[0], June, 5, round: round);
        book.Write(new RoundSkip(round, colonies[1], "queen not found", June));
        var state = book.State.Rounds[round];
        Assert.Equal([colonies[0], colonies[2], colonies[3]], state.ToSample(state.Plan.Draws[0]));
        Assert.Equal([colonies[2], colonies[3]], state.Open);
    }
}
