using Deque.AxeCore.Playwright;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>What another device records, what another tab opens and a page that dies never turn an open form to something else.</summary>
public sealed class ElsewhereTests(PublishedApp app)
{
    [Fact]
    public async Task Collect_ColonySampledElsewhere_StaysAtItAndSaysSo()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var (page, elsewhere) = (visitor.Page, new Elsewhere(visitor));
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1-4");
        await visitor.GoAsync("rounds/new");
        await Press(page, "Draw the colonies");
        await Press(page, "Keep this round");
        await page.GetByRole(AriaRole.Button, new() { Name = "Found it" }).WaitForAsync();
        var sought = await page.Locator("h1").InnerTextAsync();
        await Press(page, "Pass it over");
        await page.GetByLabel("In your own words", new() { Exact = true }).FillAsync("Too cross today");

        var book = await elsewhere.BookAsync();
        var round = book.Rounds.Values.Single();
        var colony = round.Open[0];
        Assert.Equal($"Colony {book.Colonies[colony].Name}", sought);
        await elsewhere.ArriveAsync(new JarRecord(round.Plan.On, round.Plan.Method, [4], JarBees.Counted(300), colony, round.Id));
        await page.GetByText("needs no jar in this round any more").WaitForAsync();
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync(sought, new() { UseInnerText = true });
        var check = new PageCheck();
        await page.RunAxe();
        await check.LookAsync(page, "collect-elsewhere", 64);
        Assert.Empty(check.Faults);
        await Press(page, "Go to the next colony");
        await page.GetByRole(AriaRole.Button, new() { Name = "Found it" }).WaitForAsync();
        Assert.Equal($"Colony {book.Colonies[round.Open[1]].Name}", await page.Locator("h1").InnerTextAsync());
        Assert.Empty((await elsewhere.BookAsync()).Rounds.Values.Single().Skips);

        // The same for one that was chosen before its turn.
        var chosen = book.Colonies[round.Open[2]].Name;
        await page.GetByText("Take another colony first").TapAsync();
        await Press(page, chosen);
        await page.GetByRole(AriaRole.Heading, new() { Name = $"Colony {chosen}", Exact = true }).WaitForAsync();
        await elsewhere.ArriveAsync(new JarRecord(round.Plan.On, round.Plan.Method, [4], JarBees.Counted(300), round.Open[2], round.Id));
        await page.GetByText("needs no jar in this round any more").WaitForAsync();
        Assert.Equal($"Colony {chosen}", await page.Locator("h1").InnerTextAsync());
        await Press(page, "Go to the next colony");
        await page.GetByRole(AriaRole.Heading, new() { Name = $"Colony {book.Colonies[round.Open[1]].Name}", Exact = true }).WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task EditForm_ColonyRenamedElsewhere_KeepsTheNewNameBesideTheNoteTypedHere()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var (page, elsewhere) = (visitor.Page, new Elsewhere(visitor));
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "12");
        var colony = (await elsewhere.BookAsync()).Colonies.Keys.Single();
        await visitor.GoAsync($"colony/{colony}/edit");
        await NoteOf(page).FillAsync("Strong in spring");
        await visitor.UntilKeptAsync($"store.draftGet('home/colony:{colony}').then(draft => !!draft)");
        await visitor.GoAsync($"colony/{colony}");
        await elsewhere.ArriveAsync(new ColonyRecord(colony, "12b"));
        await page.GetByRole(AriaRole.Heading, new() { Name = "12b" }).First.WaitForAsync();

        // The draft comes back with what was typed into it, and with nothing else of what the book said then.
        await visitor.GoAsync($"colony/{colony}/edit");
        await NameOf(page).WaitForAsync();
        await Assertions.Expect(NameOf(page)).ToHaveValueAsync("12b");
        await Assertions.Expect(NoteOf(page)).ToHaveValueAsync("Strong in spring");
        await elsewhere.ArriveAsync(new ColonyRecord(colony, "12c"));
        await Assertions.Expect(NameOf(page)).ToHaveValueAsync("12c");
        await Press(page, "Keep the changes");
        await visitor.UntilAtAsync($"colony/{colony}");
        var kept = (await elsewhere.BookAsync()).Colonies[colony];
        Assert.Equal(("12c", "Strong in spring"), (kept.Name, kept.Note));
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task EndForm_OtherColonyEndedElsewhere_NeverTakesTheOneThatWasUnticked()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var (page, elsewhere) = (visitor.Page, new Elsewhere(visitor));
        await visitor.OpenAsync();
        var yard = new ControlYard();
        var control = yard.NewControl();
        yard.Write(new ControlRecord(control, "formic-acid-long", ControlYard.Today.AddDays(-10), [yard.Colonies[0], yard.Colonies[1]], ControlYard.Today.AddDays(4)));
        await yard.EnterAsync(visitor);
        await elsewhere.BookAsync();
        await visitor.GoAsync($"control/{control}/end");
        await page.GetByText("Colony died").First.TapAsync();
        await page.GetByText("L1", new() { Exact = true }).TapAsync();
        await elsewhere.ArriveAsync(new ControlEnded(control, ControlYard.Today, ControlEnding.StoppedEarly, [yard.Colonies[1]], "queen lost"));
        await page.GetByText("L2", new() { Exact = true }).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await page.Locator("button[type=submit]").TapAsync();
        await page.Locator(".fault").First.WaitForAsync();
        Assert.Null((await elsewhere.BookAsync()).Colonies[yard.Colonies[0]].End);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Inspection_PageDiesOnceItIsOnTheDisk_IsNotOfferedAgain()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var (page, elsewhere) = (visitor.Page, new Elsewhere(visitor));
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1");
        var colony = (await elsewhere.BookAsync()).Colonies.Keys.Single();
        await visitor.GoAsync($"colony/{colony}/inspect");
        await NoteOf(page).FillAsync("Two frames of brood");
        await visitor.UntilKeptAsync($"store.draftGet('home/inspect:{colony}').then(draft => !!draft)");
        // From the moment the record is on the disk, nothing more of this page's reaches it.
        await page.EvaluateAsync("""
            () => {
              const begin = IDBDatabase.prototype.transaction;
              let dead = false;
              IDBDatabase.prototype.transaction = function (names, mode, options) {
                if (dead && mode === 'readwrite') throw new Error('the page is dead');
                if (mode === 'readwrite' && [names].flat().includes('entries')) dead = true;
                return begin.call(this, names, mode, options);
              };
            }
            """);
        await page.Locator("button[type=submit]").TapAsync();
        await visitor.UntilKeptAsync("store.readAfter('home', 0).then(all => all.includes('Two frames of brood'))");
        await page.GotoAsync($"/colony/{colony}/inspect");
        await NoteOf(page).WaitForAsync();
        await Assertions.Expect(NoteOf(page)).ToHaveValueAsync(string.Empty);
    }

    [Fact]
    public async Task Settings_ChangedInTheInventedBookAndNotKept_AreNotOfferedToTheKeepersOwn()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the demo" }).ClickAsync();
        await page.GetByText("Invented data.").WaitForAsync();
        await visitor.GoAsync("settings/controls");
        await page.Locator("select").First.SelectOptionAsync("NewZealand");
        await page.GetByRole(AriaRole.Button, new() { Name = "Empty the form" }).WaitForAsync();
        await visitor.UntilKeptAsync("store.draftGet('demo/controls').then(draft => !!draft)");
        await visitor.GoAsync("settings");
        await Press(page, "Open my own book and keep the demo");
        await page.GetByText("Invented data.").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await visitor.GoAsync("settings/controls");
        await page.Locator("button[type=submit]").WaitForAsync();
        await Assertions.Expect(page.Locator("select").First).ToHaveValueAsync(string.Empty);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Empty the form" })).ToHaveCountAsync(0);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Degrees_TypedInCelsius_AreNotReadAsFahrenheit()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var (page, elsewhere) = (visitor.Page, new Elsewhere(visitor));
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1");
        var apiary = (await elsewhere.BookAsync()).Apiaries.Keys.Single();
        await visitor.GoAsync($"apiary/{apiary}/weather");
        var lowest = page.Locator(".pair input").First;
        await lowest.FillAsync("-3");
        await visitor.UntilKeptAsync($"store.draftGet('home/normals:{apiary}').then(draft => !!draft)");
        await elsewhere.ArriveAsync(new PolicyRecord(Units: UnitSystem.UsCustomary));
        await page.GetByText("°F").First.WaitForAsync();
        await Assertions.Expect(lowest).ToHaveValueAsync(string.Empty);
        await elsewhere.ArriveAsync(new PolicyRecord(Units: UnitSystem.Metric));
        await page.GetByText("°C").First.WaitForAsync();
        await Assertions.Expect(lowest).ToHaveValueAsync("-3");
        Assert.Empty(visitor.Faults);
    }

    private static ILocator NoteOf(IPage page) => page.GetByLabel("Note", new() { Exact = true });

    private static ILocator NameOf(IPage page) => page.GetByLabel("Number or name");

    private static Task Press(IPage page, string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).TapAsync();
}
