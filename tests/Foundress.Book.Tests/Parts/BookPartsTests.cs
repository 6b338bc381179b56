using CsCheck;
using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Book.Parts;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.Parts;

public sealed class BookPartsTests
{
    private static readonly DateOnly Today = new(2026, 9, 20);

    // What is said of an apiary from its part is what the whole book says of it, in whatever order the entries came.
    [Fact]
    public void Of_EveryApiaryOfTheDemo_PartSaysWhatTheWholeBookSays()
    {
        var entries = DemoBook.Entries(TestBook.Knowledge, 4711, Today).ToArray();
        var whole = new Ledger();
        whole.Add(entries);
        var expected = whole.State.ApiariesByName.ToDictionary(apiary => apiary.Id, apiary => ApiarySaid.Of(whole, apiary.Id, Today));
        Gen.Shuffle(entries).Sample(
            shuffled =>
            {
                var parts = Parts(shuffled);
                Assert.Equal(entries.Length, parts.Count);
                foreach (var (apiary, said) in expected)
                {
                    var handles = parts.Of(apiary);
                    Assert.True(handles.Count < entries.Length * 0.7, $"{handles.Count} of {entries.Length}");
                    Assert.Equal(said, ApiarySaid.Of(Book(shuffled, handles), apiary, Today));
                }
            },
            iter: 6);
    }

    // Moves, splits, unions, controls over two apiaries, loose jars placed later and strikes of strikes.
    [Fact]
    public void Of_ColoniesThatMoveSplitAndUnite_PartSaysWhatTheWholeBookSays() =>
        Gen.Int[0, 10_000].Sample(
            seed =>
            {
                var entries = Tangled(seed);
                var whole = new Ledger();
                whole.Add(entries);
                var parts = Parts(entries);
                foreach (var apiary in whole.State.ApiariesByName)
                    Assert.Equal(ApiarySaid.Of(whole, apiary.Id, Today), ApiarySaid.Of(Book(entries, parts.Of(apiary.Id)), apiary.Id, Today));
            },
            iter: 60);

    [Fact]
    public void VersionOf_EntryOfOneApiary_MovesThatApiaryOnly()
    {
        var book = new TestBook();
        var (near, far) = (book.Apiary("Near"), book.Apiary("Far"));
        var (own, other) = (book.Colony(near, "1"), book.Colony(far, "2"));
        var parts = Parts([.. book.Ledger.Entries]);
        var (before, beside) = (parts.VersionOf(near), parts.VersionOf(far));

        parts.Add(book.Jar(own, Today, 3), 100);
        Assert.True(parts.VersionOf(near) > before);
        Assert.Equal(beside, parts.VersionOf(far));
        parts.Add(book.Write(new PolicyRecord(OwnAct: 4)), 101);
        Assert.True(parts.VersionOf(far) > beside);

        // A colony that comes brings all it ever had.
        var count = parts.Of(near).Count;
        parts.Add(book.Write(new ColonyMoved(other, near, Today)), 102);
        Assert.Equal(count + 2, parts.Of(near).Count);
    }

    [Fact]
    public void Add_SeenBefore_IsPassedOver()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Near");
        var parts = Parts([.. book.Ledger.Entries]);
        Assert.False(parts.Add(book.Ledger.Entries.First(), 77));
        Assert.Equal([0L], parts.Of(apiary));
    }

    // An end that came before its control joins the part with it: whoever reads on from a later place must begin again.
    [Fact]
    public void MembersOf_ControlToldOfAfterItsEnd_AnotherName()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Near");
        var colony = book.Colony(apiary, "1");
        var use = new ControlId(book.Ids.Next());
        var control = book.Write(new ControlRecord(use, "thymol", Today, [colony], Today.AddDays(28)));
        var end = book.Write(new ControlEnded(use, Today.AddDays(28)));
        var before = book.Ledger.Entries.Where(entry => entry != control && entry != end).ToArray();
        var parts = Parts(before);
        parts.Add(end, 10);
        var members = parts.MembersOf(apiary);
        Assert.DoesNotContain(10L, parts.Of(apiary));
        parts.Add(book.Jar(colony, Today, 2), 11);
        Assert.Equal(members, parts.MembersOf(apiary));
        parts.Add(control, 12);
        Assert.Contains(10L, parts.Of(apiary));
        Assert.NotEqual(members, parts.MembersOf(apiary));
        members = parts.MembersOf(apiary);
        parts.Add(book.Write(new ControlRecord(new ControlId(book.Ids.Next()), "thymol", Today, [colony])), 13);
        Assert.Equal(members, parts.MembersOf(apiary));
    }

    private static Entry[] Tangled(int seed)
    {
        var random = new Random(seed);
        var book = new TestBook(seed: seed + 1);
        ApiaryId[] apiaries = [book.Apiary("A"), book.Apiary("B"), book.Apiary("C")];
        var colonies = new List<ColonyId>();
        var jars = new List<Entry>();
        for (var n = 0; n < 6; n++)
            colonies.Add(book.Colony(apiaries[n % 3], $"{n}", new DateOnly(2026, 3, 1)));
        for (var n = 0; n < 40; n++)
        {
            var colony = colonies[random.Next(colonies.Count)];
            var day = new DateOnly(2026, 4, 1).AddDays(random.Next(160));
            switch (random.Next(9))
            {
                case 0:
                    book.Write(new ColonyMoved(colony, apiaries[random.Next(3)], day));
                    break;
                case 1:
                    var child = new ColonyId(book.Ids.Next());
                    book.Write(new ColonySplit(colony, child, $"s{n}", day));
                    colonies.Add(child);
                    break;
                case 2:
                    book.Write(new ColoniesUnited(colony, colonies[random.Next(colonies.Count)], day));
                    break;
                case 3:
                    var use = new ControlId(book.Ids.Next());
                    book.Write(new ControlRecord(use, "formic-acid-long", day, [colony, colonies[random.Next(colonies.Count)]], day.AddDays(14)));
                    if (random.Next(2) == 0)
                        book.Write(new ControlEnded(use, day.AddDays(random.Next(15))));
                    break;
                case 4:
                    var loose = book.Jar(null, day, random.Next(20));
                    book.Write(new JarPlaced(loose.Id, colony));
                    break;
                case 5 when jars.Count > 0:
                    var strike = book.Strike(jars[random.Next(jars.Count)]);
                    if (random.Next(2) == 0)
                        book.Strike(strike, "it was right");
                    break;
                case 6:
                    book.Write(new InspectionRecord(colony, day, 8, random.Next(6), SupersOn: random.Next(2) == 0));
                    break;
                default:
                    jars.Add(book.Jar(colony, day, random.Next(25)));
                    break;
            }
        }

        return [.. book.Ledger.Entries];
    }

    private static BookParts Parts(Entry[] entries)
    {
        var parts = new BookParts();
        for (var n = 0; n < entries.Length; n++)
            parts.Add(entries[n], n);
        return parts;
    }

    private static Ledger Book(Entry[] entries, IReadOnlyList<long> handles)
    {
        var ledger = new Ledger();
        ledger.Add(handles.Select(handle => entries[handle]));
        return ledger;
    }
}
