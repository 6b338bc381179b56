using System.Globalization;
using Foundress.Book.Breeding;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.Breeding;

public sealed class BreedingListsTests
{
    private static readonly DateOnly May = new(2026, 5, 1);
    private static readonly DateOnly Today = new(2026, 8, 20);

    [Fact]
    public void Of_OneColonyWithoutGrowth_StandsFirst()
    {
        var (book, apiary, colonies) = Orchard(6);
        for (var i = 0; i < 6; i++)
        {
            book.Jar(colonies[i], May, 12);
            book.Jar(colonies[i], May.AddDays(60), i == 3 ? 2 : 60 + i);
        }

        var list = List(book, apiary);
        Assert.Equal(colonies[3], list.Rows[0].Colony.Id);
        Assert.True(list.Rows[0].Growth.ChanceInBestFifth.Value > 0.8);
    }

    [Fact]
    public void Of_ColoniesAlike_WarnsThatTheOrderIsChance()
    {
        var (book, apiary, colonies) = Orchard(8);
        foreach (var colony in colonies)
        {
            book.Jar(colony, May, 3);
            book.Jar(colony, May.AddDays(30), 6);
        }

        var list = List(book, apiary);
        Assert.True(list.Ranking!.IsNoise);
        Assert.StartsWith("This order is mostly chance", list.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_FewerThanFive_SaysHowManyItTakes()
    {
        var (book, apiary, colonies) = Orchard(4);
        book.Jar(colonies[0], May, 3);
        var list = List(book, apiary);
        Assert.Empty(list.Rows);
        Assert.Equal(3, list.LeftOut.Count);
        Assert.Contains("at least 5 colonies", list.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SplitBetweenJars_IsNotReadAsSlowGrowth()
    {
        var (book, apiary, colonies) = Orchard(6);
        for (var i = 0; i < 6; i++)
        {
            book.Jar(colonies[i], May, 12);
            book.Jar(colonies[i], May.AddDays(60), i == 3 ? 2 : 60);
        }

        book.Write(new ColonySplit(colonies[3], new ColonyId(book.Ids.Next()), "3-26", May.AddDays(20)));
        var split = List(book, apiary).Rows.Single(row => row.Colony.Id == colonies[3]);
        Assert.False(split.Growth.FromJars);
        Assert.True(split.Growth.ChanceInBestFifth.Value < 0.6);
    }

    [Fact]
    public void Of_ControlBetweenJars_IsNotReadAsSlowGrowth()
    {
        var (book, apiary, colonies) = Orchard(6);
        for (var i = 0; i < 6; i++)
        {
            book.Jar(colonies[i], May, 12);
            book.Jar(colonies[i], May.AddDays(60), i == 3 ? 2 : 60);
        }

        book.Write(new ControlRecord(new ControlId(book.Ids.Next()), "formic-acid-long", May.AddDays(20), [colonies[3]]));
        Assert.False(List(book, apiary).Rows.Single(row => row.Colony.Id == colonies[3]).Growth.FromJars);
    }

    private static BreedingList List(TestBook book, ApiaryId apiary) =>
        new BreedingLists(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture).Of([apiary], May.AddDays(-1), Today);

    private static (TestBook Book, ApiaryId Apiary, ColonyId[] Colonies) Orchard(int colonies)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        return (book, apiary, [.. Enumerable.Range(1, colonies).Select(n => book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1)))]);
    }
}
