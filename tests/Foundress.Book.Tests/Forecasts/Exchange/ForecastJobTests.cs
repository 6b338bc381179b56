using System.Globalization;
using System.Text.Json;
using Foundress.Book.Forecasts;
using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Jobs;
using Foundress.Book.Journal;

namespace Foundress.Book.Tests.Forecasts.Exchange;

public sealed class ForecastJobTests
{
    private static readonly DateOnly Today = new(2026, 7, 1);

    [Fact]
    public void Run_Apiary_GivesWhatTheForecasterGives()
    {
        var (book, apiary, colonies) = Orchard(3);
        var steps = BookJobs.Find("forecast").Run(Setting(book), ForecastJson.Write(Ask(apiary))).ToList();
        var direct = new ApiaryForecaster(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture)
            .Of(book.State.Apiaries[apiary], Today, new ForecastOptions { Particles = 200, RecordDays = 365, Ahead = 60 });
        var course = ForecastJson.ReadCourse(steps[^1].Output!);
        Assert.All(steps.SkipLast(1), step => Assert.Null(step.Output));
        Assert.Equal(steps[^1].Of, steps[^1].Done);
        Assert.True(steps.Count > colonies.Length);
        Assert.Equal(direct.Sentence, course.Sentence);
        Assert.Equal(direct.Soonest, course.Soonest);
        Assert.Equal(direct.Colonies.Select(one => (one.Colony, one.Name, one.Jars, one.Outlook, one.NextJar, one.Sentence)), course.Colonies.Select(one => (one.Colony, one.Name, one.Jars, one.Outlook, one.NextJar, one.Sentence)));
        foreach (var (wanted, got) in direct.Colonies[0].Fan.Zip(course.Colonies[0].Fan))
        {
            Assert.Equal(wanted.On, got.On);
            Assert.Equal(wanted.Low, got.Low, 1e-6 * wanted.Low);
            Assert.Equal(wanted.High, got.High, 1e-6 * wanted.High);
        }

        Assert.Equal(direct.Fan.Count, course.Fan.Count);
    }

    [Fact]
    public void Run_OnlyOneColonyWithAControl_GivesThatColonyAsAmongAll()
    {
        var (book, apiary, colonies) = Orchard(3);
        var all = Course(book, Ask(apiary) with { Agent = "formic-acid-long", From = Today.AddDays(5) });
        var one = Course(book, Ask(apiary) with { Agent = "formic-acid-long", From = Today.AddDays(5), Only = colonies[1] });
        var own = Assert.Single(one.Colonies);
        Assert.Equal(JsonSerializer.Serialize(all.Colonies.Single(colony => colony.Colony == colonies[1])), JsonSerializer.Serialize(own));
        Assert.NotNull(own.Supposed);
    }

    [Theory]
    [InlineData("{", "This is no request for a forecast")]
    [InlineData("null", "not null")]
    [InlineData("{\"apiary\":\"00000000-0000-0000-0000-000000000001\",\"today\":\"2026-07-01\",\"particles\":200,\"recordDays\":365}", "Apiary 00000000-0000-0000-0000-000000000001 is not in the book")]
    public void Run_BadInput_SaysWhatIsWrong(string input, string said)
    {
        var (book, _, _) = Orchard(1);
        var error = Assert.Throws<ArgumentException>(() => new ForecastJob().Run(Setting(book), input));
        Assert.Contains(said, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_UnknownControlOrNoDay_NamesIt()
    {
        var (book, apiary, _) = Orchard(1);
        Assert.Contains("'smoke'", Assert.Throws<ArgumentException>(() => Course(book, Ask(apiary) with { Agent = "smoke", From = Today })).Message, StringComparison.Ordinal);
        Assert.Contains("would begin", Assert.Throws<ArgumentException>(() => Course(book, Ask(apiary) with { Agent = "formic-acid-long" })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_UnknownJob_ListsThoseThereAre() =>
        Assert.Contains("forecast", Assert.Throws<ArgumentException>(() => BookJobs.Find("guess")).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("{\"apiary\":1}")]
    [InlineData("[]")]
    [InlineData("{}")]
    public void ReadCourse_AnotherText_SaysSo(string text) =>
        Assert.Contains("no forecast", Assert.Throws<ArgumentException>(() => ForecastJson.ReadCourse(text)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("7")]
    [InlineData("[]")]
    [InlineData("\"?\"")]
    [InlineData("\"AAAA\"")]
    [InlineData("\"/////wAAAAAAAAAAAAAAAAAAAAAAAAAA\"")]
    [InlineData("\"AQAAAAAAwH8AAAAAAAAAAAAAAAAAAAAA\"")]
    [InlineData("\"AQAAAAAAgL8AAAAAAAAAAAAAAAAAAAAA\"")]
    public void ReadCourse_BrokenFan_Throws(string fan)
    {
        var (book, apiary, _) = Orchard(1);
        var text = ForecastJson.Write(Course(book, Ask(apiary)) with { Fan = [], Colonies = [] });
        Assert.Single(ForecastJson.ReadCourse(text.Replace("\"fan\":\"\"", "\"fan\":\"AQAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA\"", StringComparison.Ordinal)).Fan);
        Assert.Throws<ArgumentException>(() => ForecastJson.ReadCourse(text.Replace("\"fan\":\"\"", $"\"fan\":{fan}", StringComparison.Ordinal)));
    }

    private static ForecastRequest Ask(ApiaryId apiary) => new(apiary, Today, 200, 365, Ahead: 60);

    private static JobSetting Setting(TestBook book) => new(book.Ledger, new BroodSeasons(TestBook.Knowledge), CultureInfo.InvariantCulture);

    private static ApiaryCourse Course(TestBook book, ForecastRequest ask) =>
        ForecastJson.ReadCourse(new ForecastJob().Run(Setting(book), ForecastJson.Write(ask)).Last().Output!);

    private static (TestBook Book, ApiaryId Apiary, ColonyId[] Colonies) Orchard(int colonies)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        ColonyId[] all = [.. Enumerable.Range(1, colonies).Select(n => book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1)))];
        for (var i = 0; i < all.Length; i++)
            book.Jar(all[i], Today.AddDays(-2 - i), 3 * i);
        return (book, apiary, all);
    }
}
