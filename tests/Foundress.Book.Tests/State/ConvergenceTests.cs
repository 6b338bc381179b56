using CsCheck;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.State;

public sealed class ConvergenceTests
{
    // Three devices write at their own pace, see each other or not; then the entries reach a reader in any order, in any
    // portions, with repeats. The state must not depend on any of that.
    [Fact]
    public void State_AnyOrderPortionsAndRepeats_IsTheSame()
    {
        var entries = ManyEntries();
        var expected = new Ledger();
        expected.Add(entries);
        var wanted = Snapshot.Of(expected.State);
        Gen.Select(Gen.Shuffle(entries), Gen.Int[1, 7], Gen.Int[0, 30]).Sample(
            (shuffled, portion, repeats) =>
            {
                var ledger = new Ledger();
                foreach (var part in shuffled.Chunk(portion))
                {
                    ledger.Add(part);
                    _ = ledger.State;
                }

                ledger.Add(shuffled.Take(repeats));
                Assert.Equal(wanted, Snapshot.Of(ledger.State));
                Assert.Equal(expected.Entries, ledger.Entries);
            },
            iter: 300);
    }

    private static Entry[] ManyEntries()
    {
        var books = new[] { new TestBook("device-a", 1), new TestBook("device-b", 2), new TestBook("device-c", 3) };
        var apiary = books[0].Apiary("Orchard");
        var heath = books[0].Apiary("Heath");
        var colonies = Enumerable.Range(1, 4).Select(n => books[0].Colony(apiary, $"{n}")).ToArray();
        var day = new DateOnly(2026, 6, 1);
        foreach (var (book, index) in books.Select((b, i) => (b, i)))
        {
            book.Write(new ApiaryRecord(apiary, Name: $"Orchard {index}"));
            book.Write(new ColonyRecord(colonies[index], Note: $"seen by {index}"));
            var jar = book.Jar(colonies[index], day.AddDays(index), 3 + index);
            book.Jar(null, day, 7 + index);
            book.Write(new ColonyMoved(colonies[3], index == 1 ? heath : apiary, day.AddDays(index)));
            book.Write(new InspectionRecord(colonies[index], day, FramesOfBees: 8 + index));
            book.Write(new QueenRecord(colonies[index], day.AddDays(-index), QueenEvent.Caged));
            book.Write(new BroodRemoved(colonies[3], day, RemovedBrood.Drone, 0.5 + (0.1 * index)));
            var strike = book.Strike(jar);
            if (index == 2)
                book.Strike(strike, "it was right");
            book.Write(new PolicyRecord(OwnAct: 3 + index, Confidence: index == 0 ? 0.9 : null));
        }

        var control = new ControlId(books[0].Ids.Next());
        foreach (var (book, index) in books.Select((b, i) => (b, i)))
        {
            book.Write(new ControlRecord(control, "thymol", day.AddDays(index), [colonies[0], colonies[2]], day.AddDays(28 + index)));
            var ended = book.Write(new ControlEnded(control, day.AddDays(25 + index), ControlEnding.StoppedEarly, index == 0 ? [colonies[0]] : null, "hot"));
            if (index == 1)
                book.Strike(ended);
            book.Write(new AgentRecord("thymol", Days: 28 + index, Refused: index == 1 ? true : null));
            book.Write(new NormalsRecord(apiary, [.. Enumerable.Repeat(20d + index, 12)], [.. Enumerable.Repeat(10d, 12)]));
        }

        books[1].Write(new ColonyDied(colonies[2], day.AddDays(30), "robbed"));
        return [.. books.SelectMany(book => book.Ledger.Entries)];
    }
}
