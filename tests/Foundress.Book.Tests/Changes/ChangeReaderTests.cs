using System.Globalization;
using Foundress.Book.Changes;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.Changes;

public sealed class ChangeReaderTests
{
    private static readonly DateOnly June = new(2026, 6, 10);
    private static readonly DateOnly July = new(2026, 7, 10);

    /// <summary>6 in 300 then 14 in 320 after 30 days: ratio (300/320)(14.5/6.5) F(29, 13); median and 95 % limits from SciPy 1.10.1, scipy.stats.f.ppf.</summary>
    [Fact]
    public void OfColony_TwoCountedJars_GivesTheRatioOfTwoGammaPosteriors()
    {
        var (book, _, colonies) = Orchard(1);
        book.Jar(colonies[0], June, 6);
        book.Jar(colonies[0], July, 14, 320);
        var change = Reader(book).OfColony(colonies[0])!;
        Assert.Equal(30, change.Days);
        Assert.Equal(2.1527116930245604, change.Ratio, 7);
        Assert.Equal(0.875046013481338, change.RatioInterval.Lower, 7);
        Assert.Equal(5.94999624865244, change.RatioInterval.Upper, 7);
        Assert.Equal(Math.Log(change.Ratio) / 30, change.PerDay, 9);
        Assert.Contains("not settled", change.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void OfColony_OneVisitOrOtherScale_HasNothingToCompare()
    {
        var (book, _, colonies) = Orchard(1);
        book.Jar(colonies[0], June, 6);
        Assert.Null(Reader(book).OfColony(colonies[0]));
        book.Jar(colonies[0], July, 6, method: "sugar-shake");
        Assert.Null(Reader(book).OfColony(colonies[0]));
    }

    [Fact]
    public void OfApiary_GrownTenfold_SaysGrownAndListsColoniesSampledTwice()
    {
        var (book, apiary, colonies) = Orchard(8);
        for (var i = 0; i < 6; i++)
            book.Jar(colonies[i], June, 2 + (i % 2));
        for (var i = 2; i < 8; i++)
            book.Jar(colonies[i], July, 25 + i);
        var visits = ApiaryVisits.Of(apiary, book.State, TestBook.Knowledge, "wash-per-100");
        Assert.Equal([June, July], visits.Select(visit => visit.On));
        var change = Reader(book).OfApiary(visits[1], visits[1].Posterior(8))!;
        Assert.True(change.Grown.Value > 0.99);
        Assert.Contains("It has grown.", change.Sentence, StringComparison.Ordinal);
        Assert.Equal(colonies[2..6].OrderBy(id => id.Value), change.Colonies.Select(one => one.Colony).OrderBy(id => id.Value));
    }

    [Fact]
    public void OfApiary_JarsOfOneRoundOnTwoDays_AreOneVisit()
    {
        var (book, apiary, colonies) = Orchard(3);
        var round = new RoundId(book.Ids.Next());
        book.Jar(colonies[0], June, 2, round: round);
        book.Jar(colonies[1], June.AddDays(1), 3, round: round);
        book.Jar(colonies[2], June, 1);
        var visits = ApiaryVisits.Of(apiary, book.State, TestBook.Knowledge, "wash-per-100");
        Assert.Equal([(June, 1), (June.AddDays(1), 2)], visits.Select(visit => (visit.On, visit.Colonies.Count)));
    }

    [Fact]
    public void OfColony_NoMiteEverFound_StaysFinite()
    {
        var (book, _, colonies) = Orchard(1);
        book.Jar(colonies[0], June, 0);
        book.Jar(colonies[0], July, 0);
        var change = Reader(book).OfColony(colonies[0])!;
        Assert.True(double.IsFinite(change.RatioInterval.Upper));
        Assert.DoesNotContain("NaN", change.Sentence, StringComparison.Ordinal);
    }

    private static ChangeReader Reader(TestBook book) => new(book.State, TestBook.Knowledge, 0.95, CultureInfo.InvariantCulture);

    private static (TestBook Book, ApiaryId Apiary, ColonyId[] Colonies) Orchard(int colonies)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        return (book, apiary, [.. Enumerable.Range(1, colonies).Select(n => book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1)))]);
    }
}
