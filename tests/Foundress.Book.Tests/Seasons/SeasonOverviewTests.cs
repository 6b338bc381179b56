using System.Globalization;
using Foundress.Book.Demo;
using Foundress.Book.Judging;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;

namespace Foundress.Book.Tests.Seasons;

public sealed class SeasonOverviewTests
{
    private static readonly DateOnly Founded = new(2026, 4, 1);

    [Fact]
    public void On_AllKinds_OverComesFirstThenUnsettledThenOverdueThenTheRest()
    {
        var book = new TestBook();
        // Named so that the order by name alone would be the opposite one.
        Jar(book, "Quiet", 0, new DateOnly(2026, 8, 15));
        book.Colony(book.Apiary("Missed"), "1", Founded);
        Jar(book, "Open question", 9, new DateOnly(2026, 8, 15));
        Jar(book, "Worst", 60, new DateOnly(2026, 8, 15));
        Assert.Equal(
            [("Worst", Urgency.OverTheLine), ("Open question", Urgency.NotSettled), ("Missed", Urgency.Overdue), ("Quiet", Urgency.Rest)],
            On(book).Select(season => (season.Apiary.Name, season.Urgency)));
    }

    [Fact]
    public void On_SameUrgency_OrdersByNameAsPeopleCount()
    {
        var book = new TestBook();
        foreach (var name in new[] { "Site 10", "Site 9", "Site 2" })
            Jar(book, name, 60, new DateOnly(2026, 8, 15));
        Assert.Equal(["Site 2", "Site 9", "Site 10"], On(book).Select(season => season.Apiary.Name));
    }

    [Fact]
    public void Of_OldJarOverTheLine_NoLongerCountsAsOver()
    {
        var book = new TestBook();
        Jar(book, "Orchard", 60, new DateOnly(2026, 5, 1));
        Assert.NotEqual(Urgency.OverTheLine, On(book)[0].Urgency);
    }

    [Fact]
    public void Of_ApiaryWithoutColonies_AsksForNothing()
    {
        var book = new TestBook();
        book.Apiary("Empty");
        var season = Assert.Single(On(book));
        Assert.Equal(Urgency.Rest, season.Urgency);
        Assert.Empty(season.Pending);
    }

    [Fact]
    public void Of_SeveralMissedDates_NamesTheLastMissedAndWhatComesNext()
    {
        var book = new TestBook();
        book.Colony(book.Apiary("Orchard"), "1", new DateOnly(2026, 1, 1));
        var pending = On(book)[0].Pending;
        Assert.Single(pending, due => due.Overdue);
        Assert.All(pending, due => Assert.False(due.Done));
        Assert.Single(pending, due => due.From > TestBook.Today);
        Assert.StartsWith($"Jars were due by {Say.Day(pending.Single(due => due.Overdue).To)} and none were taken.", On(book)[0].Sentence, StringComparison.Ordinal);
        Assert.Equal(pending.OrderBy(due => due.On), pending);
    }

    [Fact]
    public void Of_MissedDateBeforeOneThatWasKept_IsForgotten()
    {
        var book = new TestBook();
        var colony = book.Colony(book.Apiary("Orchard"), "1", new DateOnly(2026, 1, 1));
        var missed = On(book)[0].Pending.Single(due => due.Overdue);
        book.Jar(colony, missed.On, 1);
        Assert.DoesNotContain(On(book)[0].Pending, due => due.Overdue);
    }

    [Fact]
    public void Sentence_JarsOfDecemberReadInJanuary_AreStillTheLatest()
    {
        var book = new TestBook();
        Jar(book, "Orchard", 60, new DateOnly(2026, 12, 20));
        var state = book.State;
        var strip = Strips(book).Of(state.Apiaries.Values.Single(), new DateOnly(2027, 1, 5));
        Assert.Empty(strip.Jars);
        Assert.Contains("over the line", strip.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Sentence_AnotherYearShown_TellsThatYearOnly()
    {
        var book = new TestBook();
        Jar(book, "Orchard", 60, new DateOnly(2026, 8, 15));
        var strip = Strips(book).Of(book.State.Apiaries.Values.Single(), TestBook.Today, TestBook.Today.AddYears(-1));
        Assert.StartsWith("No jars from 1 Jan 2025", strip.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_WholeDemoBook_StandAsTheFullReadingSays()
    {
        var ledger = new Ledger();
        ledger.Add(DemoBook.Entries(TestBook.Knowledge, DemoBook.DefaultSeed, TestBook.Today));
        var state = ledger.State;
        var reader = new JarReader(TestBook.Knowledge, JudgingPolicy.Of(state, TestBook.Knowledge), CultureInfo.InvariantCulture);
        var strips = new SeasonStrips(state, TestBook.Knowledge, CultureInfo.InvariantCulture);
        foreach (var apiary in state.Apiaries.Values)
        {
            foreach (var mark in strips.Of(apiary, TestBook.Today).Jars)
            {
                var full = reader.Read(state.Jars.Single(jar => jar.Id == mark.Jar).Facts, apiary);
                Assert.Equal(
                    (full.Level.Per100Bees, full.Interval.Lower.Per100Bees, full.Interval.Upper.Per100Bees, full.Standing),
                    (mark.Level, mark.Lower, mark.Upper, mark.Standing));
            }
        }
    }

    private static void Jar(TestBook book, string apiary, int mites, DateOnly on) =>
        book.Jar(book.Colony(book.Apiary(apiary), "1", Founded), on, mites);

    private static SeasonStrips Strips(TestBook book) => new(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture);

    private static IReadOnlyList<ApiarySeason> On(TestBook book) =>
        new SeasonOverview(book.State, TestBook.Knowledge, Strips(book)).On(TestBook.Today);
}
