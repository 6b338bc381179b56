using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class RoundTests(PublishedApp app)
{
    [Fact]
    public async Task Round_WholeWithoutNetwork_ResumesSkipsUndoesAndGivesTheResult()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, keepsProgram: true);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.OfflineReadyAsync();
        await visitor.Context.SetOfflineAsync(true);
        await visitor.RegisterAsync("Heath", "1-12");
        var drawn = await PlanAsync(visitor, "2026");
        Assert.Equal(8, drawn.Count);
        await ColonyAsync(page, drawn[0]);
        await page.GetByText("1 of 8").WaitForAsync();

        await CollectAsync(page, 6);
        await page.GetByText($"Colony {drawn[0]}: 6 mites kept").WaitForAsync();
        await ColonyAsync(page, drawn[1]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).TapAsync();
        await ColonyAsync(page, drawn[0]);
        await CollectAsync(page, 5);
        await ColonyAsync(page, drawn[1]);
        await CollectAsync(page, 0);

        // In the middle of the third jar the page is loaded again: first with the timer running, then with a half count.
        await ColonyAsync(page, drawn[2]);
        await Press(page, "Found it");
        await Press(page, "She is safe");
        await Press(page, "The bees are in the jar");
        await Press(page, "Start");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop" }).WaitForAsync();
        await SavedAsync(page, "shaking");
        await page.ReloadAsync();
        await ColonyAsync(page, drawn[2]);
        await page.GetByRole(AriaRole.Heading, new() { Name = "Shake" }).WaitForAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Start" })).ToHaveCountAsync(0);
        await Press(page, "Shaken");
        await page.GetByText("a short shake undercounts").WaitForAsync();
        await TallyAsync(page, 3);
        await SavedAsync(page, "\"mites\":\"3\"");
        await page.ReloadAsync();
        await page.Locator(".pad .count", new() { HasText = "3" }).WaitForAsync();
        await page.Locator(".pad").FocusAsync();
        await page.Keyboard.PressAsync("Space");
        await page.Keyboard.PressAsync("Space");
        await page.Keyboard.PressAsync("Backspace");
        await page.Locator(".pad .count", new() { HasText = "4" }).WaitForAsync();
        await Press(page, "Wash the same bees again");
        await page.GetByText("First count: 4 mites.").WaitForAsync();
        await TallyAsync(page, 1);
        await Press(page, "Counted");
        await page.GetByRole(AriaRole.Heading, new() { Name = "5 mites (4 + 1). How many bees?" }).WaitForAsync();
        await page.GetByText("Counted", new() { Exact = true }).TapAsync();
        await Press(page, "Keep the jar");
        await page.GetByText("No number is given.").WaitForAsync();
        await page.GetByLabel("Bees counted", new() { Exact = true }).FillAsync("312");
        await Press(page, "Keep the jar");

        // The third was shaken too short: that must not become the time of the jars after it, not even after a reload.
        await ColonyAsync(page, drawn[3]);
        await page.ReloadAsync();
        await page.GetByText("shaken 1 min").WaitForAsync();

        // The fourth cannot be sampled: the first reserve stands in for it.
        await ColonyAsync(page, drawn[3]);
        await Press(page, "Found it");
        await Press(page, "Not found: pass it over");
        await Assertions.Expect(page.Locator(".fault")).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByLabel("In your own words", new() { Exact = true })).ToHaveValueAsync("Queen not found");
        var standIn = await page.GetByText(" stands in for it.").InnerTextAsync();
        await Press(page, "Pass it over");
        await ColonyAsync(page, drawn[4]);
        var reserve = standIn.Split(' ')[1];
        Assert.DoesNotContain(reserve, drawn);
        await page.GetByText($"{drawn[3]} passed over. {reserve} stands in for it").WaitForAsync();
        foreach (var colony in drawn.Skip(4))
        {
            await ColonyAsync(page, colony);
            await CollectAsync(page, 2);
        }

        await ColonyAsync(page, reserve);
        await CollectAsync(page, 30);
        await page.GetByRole(AriaRole.Heading, new() { Name = "Every jar is taken" }).WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Read the result" }).TapAsync();
        await page.GetByText("The apiary's mean is").First.WaitForAsync();
        await page.GetByText("8 of 12 colonies", new() { Exact = true }).WaitForAsync();
        await page.GetByText($"{drawn[3]}: Queen not found").WaitForAsync();
        await page.GetByText($"Colony {drawn[2]}: shaken").WaitForAsync();
        await page.GetByText("Show the colonies as a table").TapAsync();
        await Assertions.Expect(page.Locator(".picture tbody tr")).ToHaveCountAsync(8);
        await Assertions.Expect(page.Locator(".picture tbody tr th").First).ToHaveTextAsync(reserve, new() { UseInnerText = true });
        Assert.Empty(visitor.Faults);
    }

    // The page dies after the jar was kept and before its draft was emptied: the old count must not slip to the next colony.
    [Fact]
    public async Task Draft_LeftBehindByAKeptJar_IsNotTakenForTheNextColony()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.Context.AddInitScriptAsync("""
            globalThis.drafts = [];
            const put = IDBObjectStore.prototype.put;
            IDBObjectStore.prototype.put = function (value, key) { if (this.name === 'drafts') drafts.push(value); return put.call(this, value, key); };
            """);
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1-3");
        var drawn = await PlanAsync(visitor, "4");
        await Press(page, "Found it");
        await Press(page, "She is safe");
        await Press(page, "The bees are in the jar");
        await Press(page, "Shaken");
        await TallyAsync(page, 7);
        await Press(page, "Counted");
        await SavedAsync(page, "\"step\":\"Bees\"");
        var draft = await page.EvaluateAsync<string>("import('/js/store.js').then(s => s.draftGet('home/round:' + location.pathname.split('/')[2]))");
        await Press(page, "Keep the jar");
        await ColonyAsync(page, drawn[1]);
        // Whatever moment it died at, no draft on the disk has the count and not its colony.
        var drafts = await page.EvaluateAsync<string[]>("globalThis.drafts");
        Assert.Contains(drafts, written => written.Contains("\"mites\":\"7\"", StringComparison.Ordinal));
        Assert.All(drafts, written => Assert.DoesNotContain("\"colony\":\"\"", written, StringComparison.Ordinal));
        await page.EvaluateAsync("draft => import('/js/store.js').then(s => s.draftSet('home/round:' + location.pathname.split('/')[2], draft))", draft);
        await page.ReloadAsync();
        await ColonyAsync(page, drawn[1]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Found it" }).WaitForAsync();
        await Press(page, "Found it");
        await Press(page, "She is safe");
        await Press(page, "The bees are in the jar");
        // Shaken too short: nothing is shaken while the mites are counted, and who steps back shakes on from there.
        await Press(page, "Start");
        await Press(page, "Shaken");
        await page.Locator(".pad .count", new() { HasText = "0" }).WaitForAsync();
        await page.GetByText("of 1 min").First.WaitForAsync();
        await Press(page, "Step back");
        await page.GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop", Exact = true }).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.Empty(visitor.Faults);
    }

    // A glove taps twice: "Counted" and "Keep the jar" lie at the same place of the screen.
    [Fact]
    public async Task Counted_TappedTwice_AsksForTheBeesAndKeepsNothing()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1-3");
        await visitor.GoAsync("rounds/new");
        await page.GetByText("Sugar shake").ClickAsync();
        await Press(page, "Draw the colonies");
        await Press(page, "Keep this round");
        await Press(page, "Found it");
        await Press(page, "She is safe");
        await Press(page, "The bees are in the jar");
        await Press(page, "Shaken");
        await Press(page, "Ready to count");
        await TallyAsync(page, 4);
        // In one go, so that no time passes: the step changes, and what lies under a finger on the new button is not the button.
        var hit = await page.EvaluateAsync<bool>("""
            () => {
              const named = text => [...document.querySelectorAll('button')].find(button => button.textContent.trim() === text);
              named('Counted').click();
              const keep = named('Keep the jar');
              keep.scrollIntoView({ block: 'center' });
              const box = keep.getBoundingClientRect();
              return keep.contains(document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2));
            }
            """);
        Assert.False(hit);
        await page.GetByRole(AriaRole.Heading, new() { Name = "4 mites. How many bees?" }).WaitForAsync();
        await Assertions.Expect(page.GetByText("mites kept")).ToHaveCountAsync(0);
        await Press(page, "Keep the jar");
        await page.GetByText("4 mites kept").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Round_ThatMayStopEarly_SaysSoAndEndsThere()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1-12");
        await visitor.GoAsync("rounds/new");
        await page.GetByText("8 jars from 12 colonies.").WaitForAsync();
        await page.GetByText("What 8 jars buy in Heath").ClickAsync();
        await page.Locator("p", new() { HasText = "The mean of an apiary on the line would be known" }).WaitForAsync();
        Assert.Equal("8 of 12", await page.Locator(".fd-design:visible .fd-below text.fd-strong").First.TextContentAsync());
        await page.GetByText("Stop as soon as the jars tell").ClickAsync();
        await page.Locator("p", new() { HasText = "such a round takes" }).First.WaitForAsync();
        await page.GetByText("What it is to tell apart").ClickAsync();
        await page.GetByLabel("A high level: act", new() { Exact = true }).FillAsync("1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the colonies" }).ClickAsync();
        await page.GetByText("must lie above the one at which to wait").WaitForAsync();
        await page.GetByLabel("A high level: act", new() { Exact = true }).FillAsync("");
        var drawn = await DrawAsync(page, "7");
        await Press(page, "Keep this round");
        foreach (var colony in drawn.Take(2))
        {
            await ColonyAsync(page, colony);
            await Assertions.Expect(page.GetByText("You may stop here")).ToHaveCountAsync(0);
            await CollectAsync(page, 0);
        }

        await page.GetByText("You may stop here: 0 mites in 2 jars").WaitForAsync();
        await Press(page, "Stop here");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Every jar is taken" }).WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Read the result" }).TapAsync();
        await page.GetByText("Ended early").WaitForAsync();
        await page.GetByText("2 of 12 colonies", new() { Exact = true }).WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Plan_SameSeed_GivesTheSameDrawAndAnotherSeedAnother()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1-30");
        await visitor.GoAsync("rounds/new");
        await page.GetByText("8 jars from 30 colonies.").WaitForAsync();
        var first = await DrawAsync(page, "5");
        var second = await DrawAsync(page, "6");
        Assert.NotEqual(first, second);
        Assert.Equal(first, await DrawAsync(page, "5"));
        await page.GetByLabel("Seed", new() { Exact = true }).FillAsync("five");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the colonies" }).ClickAsync();
        await page.GetByText("“five” is not a seed.").WaitForAsync();
        await page.GetByLabel("Seed", new() { Exact = true }).FillAsync("5");
        await page.GetByLabel("Heath, of 30", new() { Exact = true }).FillAsync("31");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the colonies" }).ClickAsync();
        await page.GetByText("31 is out of range.").WaitForAsync();
        Assert.DoesNotContain(host.Entries("home"), entry => (string?)entry["kind"] == "round");
    }

    [Fact]
    public async Task CollectMode_EveryStep_PassesAxeWithTargetsForGloves()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        var check = new PageCheck();
        await visitor.OpenAsync();
        await page.RunAxe();
        await visitor.RegisterAsync("Heath", "1-9");
        await visitor.GoAsync("rounds/new");
        await page.GetByText("Way of counting").WaitForAsync();
        await check.LookAsync(page, "round-plan");
        await page.GetByText("Sugar shake").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the colonies" }).ClickAsync();
        await page.Locator(".lot li").First.WaitForAsync();
        await check.LookAsync(page, "round-drawn");
        await Press(page, "Keep this round");
        await page.GetByRole(AriaRole.Button, new() { Name = "Found it" }).WaitForAsync();
        await check.LookAsync(page, "collect-1-find", 64);
        await Press(page, "Found it");
        await check.LookAsync(page, "collect-2-queen", 64);
        await Press(page, "She is safe");
        await check.LookAsync(page, "collect-3-scoop", 64);
        await Press(page, "The bees are in the jar");
        await Press(page, "Start");
        await check.LookAsync(page, "collect-4-shake", 64);
        await Press(page, "Shaken");
        await check.LookAsync(page, "collect-5-settle", 64);
        await Press(page, "Ready to count");
        await TallyAsync(page, 7);
        await check.LookAsync(page, "collect-6-count", 64);
        await Press(page, "Counted");
        await check.LookAsync(page, "collect-7-bees", 64);
        await Press(page, "Keep the jar");
        await page.GetByText("7 mites kept").WaitForAsync();
        await check.LookAsync(page, "collect-8-kept", 64);
        await Press(page, "Pass it over");
        await check.LookAsync(page, "collect-9-skip", 64);
        Assert.Empty(check.Faults);
        Assert.Empty(visitor.Faults);
    }

    private static async Task<IReadOnlyList<string>> PlanAsync(Visitor visitor, string seed)
    {
        var page = visitor.Page;
        await visitor.GoAsync("rounds/new");
        var drawn = await DrawAsync(page, seed);
        await Press(page, "Keep this round");
        return drawn;
    }

    private static async Task<IReadOnlyList<string>> DrawAsync(IPage page, string seed)
    {
        if (!await page.GetByLabel("Seed", new() { Exact = true }).IsVisibleAsync())
            await page.GetByText("The seed of the draw").ClickAsync();
        await page.GetByLabel("Seed", new() { Exact = true }).FillAsync(seed);
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the colonies" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = $"Drawn with seed {seed}" }).WaitForAsync();
        return [.. (await page.Locator(".drawn > .lot > li").AllInnerTextsAsync()).Select(text => text["Colony ".Length..])];
    }

    private static async Task CollectAsync(IPage page, int mites)
    {
        await Press(page, "Found it");
        await Press(page, "She is safe");
        await Press(page, "The bees are in the jar");
        await Press(page, "Shaken");
        await TallyAsync(page, mites);
        await Press(page, "Counted");
        await Press(page, "Keep the jar");
    }

    private static async Task TallyAsync(IPage page, int mites)
    {
        for (var n = 0; n < mites / 5; n++)
            await Press(page, "+ 5");
        for (var n = 0; n < mites % 5; n++)
            await page.Locator(".pad").TapAsync();
    }

    private static Task Press(IPage page, string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).TapAsync();

    private static Task ColonyAsync(IPage page, string name) =>
        page.GetByRole(AriaRole.Heading, new() { Name = $"Colony {name}", Exact = true }).WaitForAsync();

    // What the page holds must be on the disk before it is loaded again.
    private static Task SavedAsync(IPage page, string text) => Patiently.UntilAsync(() => page.EvaluateAsync<bool>(
        "text => import('/js/store.js').then(s => s.draftGet('home/round:' + location.pathname.split('/')[2])).then(d => !!d && d.includes(text))", text));
}
