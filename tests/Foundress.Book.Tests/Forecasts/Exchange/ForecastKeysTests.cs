using System.Globalization;
using Foundress.Book.Demo;
using Foundress.Book.Forecasts;
using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.Forecasts.Exchange;

public sealed class ForecastKeysTests
{
    private static readonly DateOnly Today = new(2026, 7, 1);

    [Fact]
    public void Of_AnyEntryLeftOut_SameKeyMeansSameForecast()
    {
        var entries = DemoBook.Entries(TestBook.Knowledge, DemoBook.DefaultSeed, Today);
        var seasons = new BroodSeasons(TestBook.Knowledge);
        var whole = Book(entries);
        var apiaries = whole.State.ApiariesByName;
        var kept = apiaries.Select(apiary => Course(whole, apiary.Id, seasons)).ToList();
        var keys = apiaries.Select(apiary => Key(whole, Ask(apiary.Id))).ToList();
        var same = 0;
        foreach (var left in entries.GroupBy(entry => entry.Kind).SelectMany(kind => kind.Take(2)))
        {
            var book = Book(entries.Where(entry => entry != left));
            for (var i = 0; i < apiaries.Count; i++)
            {
                if (!book.State.Apiaries.ContainsKey(apiaries[i].Id) || Key(book, Ask(apiaries[i].Id)) != keys[i])
                    continue;
                Assert.True(Course(book, apiaries[i].Id, seasons) == kept[i], $"Without a {left.Kind} entry the key of {apiaries[i].Name} stayed, but its forecast changed.");
                same++;
            }
        }

        Assert.True(same > 10, $"Only {same} keys stayed: entries of one apiary should leave the others' forecasts good.");
    }

    [Fact]
    public void Of_JarOfItsOwn_Changes()
    {
        var (book, apiary, colony) = Orchard();
        var before = Key(book.Ledger, Ask(apiary));
        var jar = book.Jar(colony, Today.AddDays(-1), 3);
        var with = Key(book.Ledger, Ask(apiary));
        Assert.NotEqual(before, with);
        var strike = book.Strike(jar);
        var struck = Key(book.Ledger, Ask(apiary));
        Assert.NotEqual(with, struck);
        book.Strike(strike);
        Assert.Equal(with, Key(book.Ledger, Ask(apiary)));
    }

    [Fact]
    public void Of_JarOfAnotherApiary_Stays()
    {
        var (book, apiary, _) = Orchard();
        var elsewhere = book.Colony(book.Apiary("Elsewhere"), "9", new DateOnly(2026, 4, 1));
        var before = Key(book.Ledger, Ask(apiary));
        book.Jar(elsewhere, Today.AddDays(-1), 30);
        Assert.Equal(before, Key(book.Ledger, Ask(apiary)));
    }

    [Fact]
    public void Of_ColonyUnitedFromElsewhere_ItsRecordsCount()
    {
        var (book, apiary, colony) = Orchard();
        var other = book.Colony(book.Apiary("Elsewhere"), "9", new DateOnly(2026, 4, 1));
        book.Write(new ColoniesUnited(other, colony, Today.AddDays(-20)));
        var before = Key(book.Ledger, Ask(apiary));
        book.Write(new InspectionRecord(other, Today.AddDays(-21), FramesOfBees: 12));
        Assert.NotEqual(before, Key(book.Ledger, Ask(apiary)));
    }

    [Fact]
    public void Of_SettingsOfTheOperation_Change()
    {
        var (book, apiary, _) = Orchard();
        var before = Key(book.Ledger, Ask(apiary));
        book.Write(new PolicyRecord(SureAbove: 0.7));
        Assert.NotEqual(before, Key(book.Ledger, Ask(apiary)));
    }

    [Fact]
    public void Of_AnotherDaySeedCultureOrColony_IsAnotherKey()
    {
        var (book, apiary, colony) = Orchard();
        var keys = new ForecastKeys(book.State, book.Ledger.Entries);
        var ask = Ask(apiary);
        string[] all =
        [
            keys.Of(ask, CultureInfo.InvariantCulture),
            keys.Of(ask, CultureInfo.GetCultureInfo("de-DE")),
            keys.Of(ask with { Today = Today.AddDays(1) }, CultureInfo.InvariantCulture),
            keys.Of(ask with { Seed = 2 }, CultureInfo.InvariantCulture),
            keys.Of(ask with { Particles = 65 }, CultureInfo.InvariantCulture),
            keys.Of(ask with { Only = colony }, CultureInfo.InvariantCulture),
        ];
        Assert.Equal(all.Length, all.Distinct().Count());
    }

    private static ForecastRequest Ask(ApiaryId apiary) => new(apiary, Today, 64, 365, Ahead: 30);

    private static string Key(Ledger book, ForecastRequest ask) => new ForecastKeys(book.State, book.Entries).Of(ask, CultureInfo.InvariantCulture);

    private static string Course(Ledger book, ApiaryId apiary, BroodSeasons seasons) =>
        new ForecastJob().Run(new(book, seasons, CultureInfo.InvariantCulture), ForecastJson.Write(Ask(apiary))).Last().Output!;

    private static Ledger Book(IEnumerable<Entry> entries)
    {
        var ledger = new Ledger();
        ledger.Add(entries);
        return ledger;
    }

    private static (TestBook Book, ApiaryId Apiary, ColonyId Colony) Orchard()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        return (book, apiary, book.Colony(apiary, "1", new DateOnly(2026, 4, 1)));
    }
}
