using CsCheck;
using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;

namespace Foundress.Book.Tests.Demo;

public sealed class DemoBookTests
{
    [Fact]
    public void Entries_SameSeedAndDay_AreTheSameToTheLetter() =>
        Assert.Equal(
            DemoBook.Entries(TestBook.Knowledge, 7, TestBook.Today),
            DemoBook.Entries(TestBook.Knowledge, 7, TestBook.Today));

    [Fact]
    public void Entries_DefaultSeed_AreThreeApiariesAndAboutFortyFiveColoniesOverTwoSeasons()
    {
        var ledger = new Ledger();
        ledger.Add(DemoBook.Entries(TestBook.Knowledge, DemoBook.DefaultSeed, TestBook.Today));
        var state = ledger.State;
        Assert.Equal(3, state.Apiaries.Count);
        Assert.InRange(state.Colonies.Values.Count(colony => colony.LivesOn(TestBook.Today)), 38, 52);
        Assert.Equal(2, state.Jars.Select(jar => jar.Facts.On.Year).Distinct().Count());
        Assert.NotEmpty(state.Struck);
        Assert.Empty(state.Unreadable);
        Assert.All(ledger.Entries, entry => Assert.Equal(Operations.Demo, entry.Operation));
    }

    // The demo must be a book the rules would have let a keeper write.
    [Fact]
    public void Entries_AnySeedAndDay_KeepToTheRulesAndNeverReachBeyondToday() =>
        Gen.Select(Gen.ULong, Gen.Int[0, 720]).Sample((seed, days) =>
        {
            var today = new DateOnly(2026, 1, 1).AddDays(days);
            var ledger = new Ledger();
            var waiting = new List<Entry>();
            foreach (var entry in DemoBook.Entries(TestBook.Knowledge, seed, today))
            {
                var record = RecordJson.TryRead(entry.Kind, entry.Payload, out var problem);
                Assert.Null(problem);
                // Folding anew for each of two thousand entries would take minutes: counts and inspections wait for the next
                // entry that others refer to.
                if (record is Strike strike)
                    Assert.Contains(waiting, jar => jar.Id == strike.Entry);
                else
                    Assert.DoesNotContain(RecordRules.Check(record!, ledger.State, TestBook.Knowledge, DateOnly.FromDateTime(entry.Clock.Instant.UtcDateTime)), p => p.Gravity == Gravity.Error);
                waiting.Add(entry);
                if (record is JarRecord or InspectionRecord or MiteFallRecord or OpenedBroodRecord or Strike)
                    continue;
                ledger.Add(waiting);
                waiting.Clear();
            }

            ledger.Add(waiting);
            Assert.All(ledger.State.Jars, jar => Assert.True(jar.Facts.On <= today));
        }, iter: 2, threads: 1);
}
