using System.Globalization;
using System.Text.Json;
using Foundress.Book.Forecasts;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.Forecasts;

public sealed class ApiaryForecasterTests
{
    private static readonly DateOnly Today = new(2026, 7, 1);
    private static readonly ForecastOptions Few = new() { Particles = 400, Ahead = 90 };

    [Fact]
    public void Of_JarsOfEarlySummer_GrowTowardsTheLine()
    {
        var (book, apiary, colonies) = Orchard(3);
        foreach (var colony in colonies)
            book.Jar(colony, Today.AddDays(-2), 5);
        var course = Of(book, apiary);
        var own = course.Colonies.Single(one => one.Colony == colonies[0]);
        Assert.Equal(1, own.Jars);
        var today = own.Fan.First(point => point.On >= Today);
        Assert.InRange(today.Middle, 0.5, 4);
        Assert.True(own.Fan[^1].Middle > today.Middle, "mites grow in July with full brood");
        Assert.True(own.Outlook!.ByEnd > 0.5);
        Assert.NotNull(own.Outlook.Likely);
        Assert.All(own.Fan, point => Assert.True(point.Low <= point.LowerQuarter && point.LowerQuarter <= point.Middle && point.Middle <= point.UpperQuarter && point.UpperQuarter <= point.High));
    }

    [Fact]
    public void Of_ColonyWithoutJars_BorrowsFromItsNeighbours()
    {
        var (low, lowApiary, lowColonies) = Orchard(4);
        var (high, highApiary, highColonies) = Orchard(4);
        for (var i = 0; i < 3; i++)
        {
            low.Jar(lowColonies[i], Today.AddDays(-3), 0);
            high.Jar(highColonies[i], Today.AddDays(-3), 20);
        }

        var calm = Of(low, lowApiary).Colonies.Single(one => one.Colony == lowColonies[3]);
        var full = Of(high, highApiary).Colonies.Single(one => one.Colony == highColonies[3]);
        Assert.Equal(0, calm.Jars);
        Assert.StartsWith("No jar of its own", calm.Sentence, StringComparison.Ordinal);
        Assert.True(full.Fan[0].Middle > 2 * calm.Fan[0].Middle, $"{full.Fan[0].Middle} and {calm.Fan[0].Middle}");

        // However sure its neighbours are, without a jar of its own nobody is told to act.
        Assert.True(full.Outlook!.Now > 0.5);
        Assert.Contains("Only a jar of its own can tell", full.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("Act now", full.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ApiaryWithoutACount_SaysThatItRestsOnTheSeasonAlone()
    {
        var (book, apiary, colonies) = Orchard(2);
        var course = Of(book, apiary);
        Assert.StartsWith("Without a count here to go by", course.Sentence, StringComparison.Ordinal);
        Assert.EndsWith("which ones is not settled.", course.Sentence, StringComparison.Ordinal);
        Assert.All(course.Colonies, one => Assert.StartsWith("Without a count in this apiary to go by", one.Sentence, StringComparison.Ordinal));
        book.Jar(colonies[0], Today.AddDays(-3), 4);
        var after = Of(book, apiary);
        Assert.DoesNotContain("Without a count", after.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("Without a count", string.Concat(after.Colonies.Select(one => one.Sentence)), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SameBookAndSeed_SameForecastWhateverElseIsInTheBook()
    {
        var (book, apiary, colonies) = Orchard(2);
        book.Jar(colonies[0], Today.AddDays(-5), 4);
        var first = JsonSerializer.Serialize(Of(book, apiary));
        var elsewhere = book.Apiary("Elsewhere");
        book.Jar(book.Colony(elsewhere, "9", new DateOnly(2026, 4, 1)), Today.AddDays(-1), 30);
        Assert.Equal(first, JsonSerializer.Serialize(Of(book, apiary)));
        Assert.NotEqual(first, JsonSerializer.Serialize(Of(book, apiary, Few with { Seed = 2 })));
    }

    [Fact]
    public void Of_SupposedControl_LowersTheCourse()
    {
        var (book, apiary, colonies) = Orchard(2);
        book.Jar(colonies[0], Today.AddDays(-2), 8);
        var agent = TestBook.Knowledge.Controls.Agents["formic-acid-long"];
        var course = Of(book, apiary, Few with { Suppose = new Supposition(agent, Today.AddDays(10)) });
        var own = course.Colonies.Single(one => one.Colony == colonies[0]);
        Assert.True(own.Supposed!.Fan[^1].Middle < own.Fan[^1].Middle);
        Assert.True(own.Supposed.Outlook!.ByEnd <= own.Outlook!.ByEnd);
        Assert.Contains("The label, local law", own.Supposed.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_RecordedControl_IsReckonedWith()
    {
        var (book, apiary, colonies) = Orchard(1);
        book.Jar(colonies[0], Today.AddDays(-40), 25);
        var before = Of(book, apiary).Colonies[0].Fan.First(point => point.On >= Today).Middle;
        book.Write(new ControlRecord(new ControlId(book.Ids.Next()), "amitraz-strips", Today.AddDays(-38), [colonies[0]]));
        Assert.True(Of(book, apiary).Colonies[0].Fan.First(point => point.On >= Today).Middle < before);
    }

    [Fact]
    public void Of_EmptyApiary_SaysSo()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Empty");
        Assert.Equal("No living colonies are registered here.", Of(book, apiary).Sentence);
    }

    [Fact]
    public void Of_ExtremeCounts_StaysFinite()
    {
        var (book, apiary, colonies) = Orchard(3);
        book.Jar(colonies[0], Today.AddDays(-60), 0);
        book.Jar(colonies[0], Today.AddDays(-1), 400);
        book.Jar(colonies[1], Today.AddDays(-1), 0, 5);
        var course = Of(book, apiary);
        Assert.All(course.Colonies.SelectMany(one => one.Fan), point => Assert.True(double.IsFinite(point.High) && point.Low >= 0));
        Assert.DoesNotContain("NaN", string.Concat(course.Colonies.Select(one => one.Sentence)), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_StoppedByTheKeeper_Throws()
    {
        var (book, apiary, _) = Orchard(3);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => Forecaster(book).Of(book.State.Apiaries[apiary], Today, Few, stop.Token));
    }

    [Theory]
    [InlineData(0, 400)]
    [InlineData(400, 400)]
    [InlineData(90, 10)]
    public void Steps_OptionOutOfRange_NamesIt(int ahead, int particles)
    {
        var (book, apiary, _) = Orchard(1);
        Assert.Throws<ArgumentOutOfRangeException>(() => Forecaster(book).Steps(book.State.Apiaries[apiary], Today, new ForecastOptions { Ahead = ahead, Particles = particles }));
    }

    private static ApiaryCourse Of(TestBook book, ApiaryId apiary, ForecastOptions? options = null) =>
        Forecaster(book).Of(book.State.Apiaries[apiary], Today, options ?? Few);

    private static ApiaryForecaster Forecaster(TestBook book) => new(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture);

    private static (TestBook Book, ApiaryId Apiary, ColonyId[] Colonies) Orchard(int colonies)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        return (book, apiary, [.. Enumerable.Range(1, colonies).Select(n => book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1)))]);
    }
}
