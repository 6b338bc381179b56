using System.Globalization;
using CsCheck;
using Foundress.Book.Records;
using Foundress.Book.Seasons;
using Foundress.Science.Judging;

namespace Foundress.Book.Tests.Seasons;

public sealed class SeasonStripsTests
{
    private static readonly DateOnly Today = new(2026, 8, 20);

    [Theory]
    [InlineData(50, "2026-01-01", "2026-12-31")]
    [InlineData(-35, "2026-07-01", "2027-06-30")]
    public void Of_Apiary_ShowsItsOwnTwelveMonthsWithoutGaps(double latitude, string from, string to)
    {
        var book = new TestBook();
        book.Colony(book.Apiary("Orchard", latitude), "1", new DateOnly(2026, 1, 5));
        var strip = Strip(book);
        Assert.Equal(from, strip.From.ToString("yyyy-MM-dd"));
        Assert.Equal(to, strip.To.ToString("yyyy-MM-dd"));
        Assert.Equal(strip.From, strip.Phases[0].From);
        Assert.Equal(strip.To, strip.Phases[^1].LastDay);
        foreach (var (one, next) in strip.Phases.Zip(strip.Phases.Skip(1)))
            Assert.Equal(one.LastDay.AddDays(1), next.From);
        Assert.Equal(new LineStep(strip.From, strip.To, 2, 3), Assert.Single(strip.Lines));
        Assert.InRange(strip.Dues.Count, 4, 12);
    }

    [Fact]
    public void Of_ColonyMoved_JarsStayWithTheApiaryOfTheirDay()
    {
        var book = new TestBook();
        var orchard = book.Apiary("Orchard");
        var heath = book.Apiary("Heath");
        var colony = book.Colony(orchard, "1", new DateOnly(2026, 4, 1));
        book.Jar(colony, new DateOnly(2026, 6, 1), 3);
        book.Write(new ColonyMoved(colony, heath, new DateOnly(2026, 7, 1)));
        book.Jar(colony, new DateOnly(2026, 8, 1), 12);
        Assert.Equal(3, Assert.Single(Strip(book, "Orchard").Jars).Mites);
        Assert.Equal(12, Assert.Single(Strip(book, "Heath").Jars).Mites);
    }

    [Fact]
    public void Sentence_ColonyOverTheLine_NamesIt()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        book.Jar(book.Colony(apiary, "7", new DateOnly(2026, 4, 1)), new DateOnly(2026, 8, 10), 30);
        book.Jar(book.Colony(apiary, "8", new DateOnly(2026, 4, 1)), new DateOnly(2026, 8, 10), 1);
        var sentence = Strip(book).Sentence;
        Assert.Contains("1 of 2 jars", sentence, StringComparison.Ordinal);
        Assert.Contains("colony 7", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Sentence_OldJars_SaysTheyAreTooOld()
    {
        var book = new TestBook();
        book.Jar(book.Colony(book.Apiary("Orchard"), "7", new DateOnly(2026, 4, 1)), new DateOnly(2026, 5, 1), 1);
        Assert.Contains("too old", Strip(book).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Dues_JarsInTheWindow_AreDoneAndPassedWindowsOverdue()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        var colony = book.Colony(apiary, "1", new DateOnly(2026, 1, 1));
        var before = Strip(book).Dues;
        Assert.All(before.Where(due => due.To < Today), due => Assert.True(due.Overdue));
        var first = before[0];
        book.Jar(colony, first.On, 2);
        var after = Strip(book).Dues[0];
        Assert.True(after.Done);
        Assert.False(after.Overdue);
    }

    [Fact]
    public void Dues_ApiaryFoundedInJuly_OwesNothingForSpring()
    {
        var book = new TestBook();
        book.Colony(book.Apiary("Orchard"), "1", new DateOnly(2026, 7, 15));
        Assert.All(Strip(book).Dues, due => Assert.True(due.To >= new DateOnly(2026, 7, 15)));
    }

    [Fact]
    public void Of_AnyLatitudeAndDay_HoldsTheDayAndNeverFails() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Int[0, 3000]).Sample((latitude, days) =>
        {
            var day = new DateOnly(2022, 1, 1).AddDays(days);
            var book = new TestBook();
            var apiary = book.Apiary("Orchard", latitude);
            var colony = book.Colony(apiary, "1", day.AddYears(-1));
            book.Jar(colony, day, days % 30);
            var strip = new SeasonStrips(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture).Of(book.State.Apiaries[apiary], day);
            Assert.InRange(day, strip.From, strip.To);
            Assert.Single(strip.Jars);
            Assert.NotEmpty(strip.Sentence);
        }, iter: 60);

    private static SeasonStrip Strip(TestBook book, string? name = null) =>
        new SeasonStrips(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture)
            .Of(book.State.Apiaries.Values.First(apiary => name is null || apiary.Name == name), Today);
}
