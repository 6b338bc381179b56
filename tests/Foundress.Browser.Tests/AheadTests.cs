using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>Forecasts: they come without being asked for, beside the page, and stay.</summary>
public sealed class AheadTests(PublishedApp app)
{
    private const string NoWorkers = "delete window.Worker";

    private static readonly LocatorWaitForOptions Gone = new() { State = WaitForSelectorState.Detached };

    [Fact]
    public async Task ColonyPage_Opened_ForecastAppearsByItselfAndSurvivesAReload()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await OrchardAsync(visitor, 2);
        await page.Locator(".tiles a").First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Colony 1", Exact = true }).WaitForAsync();
        await Sentence(page).WaitForAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Work out the forecast" })).ToHaveCountAsync(0);
        var said = await Sentence(page).InnerTextAsync();
        await UntilCoursesKeptAsync(page, 1);

        // After the reload nothing can be worked out without asking, so what is shown was kept.
        await page.AddInitScriptAsync(NoWorkers);
        await page.ReloadAsync();
        await Sentence(page).WaitForAsync();
        await Assertions.Expect(Sentence(page)).ToHaveTextAsync(said, new() { UseInnerText = true });
        await Assertions.Expect(page.GetByText("before the last entry")).ToHaveCountAsync(0);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Worker_Vectors_AreWorkedByTheProcessor()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await OrchardAsync(visitor, 1);
        await Sentence(visitor.Page).WaitForAsync();
        var said = await Assert.Single(visitor.Page.Workers).EvaluateAsync<string>(
            "() => globalThis.getDotnetRuntime(0).getAssemblyExports('Foundress.Web').then(web => web.Foundress.Web.Background.Reckoner.Vectors())");
        Assert.Equal("4 by the processor", said);
    }

    [Fact]
    public async Task ColonyPage_JarKept_EarlierForecastIsMarkedUntilTheNewOneComes()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await OrchardAsync(visitor, 1);
        await page.Locator(".tiles a").First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Colony 1", Exact = true }).WaitForAsync();
        await Sentence(page).WaitForAsync();
        var before = await Sentence(page).InnerTextAsync();
        Assert.Contains("Without a count in this apiary", before, StringComparison.Ordinal);
        var colony = new Uri(page.Url).AbsolutePath.Split('/')[^1];

        // A jar arrives from another device, with the worker held up: the earlier forecast stays, and says that it is one.
        await visitor.HoldWorkersAsync();
        host.Put("home", Jar(colony, 21));
        await visitor.GoAsync("settings");
        await visitor.UntilExchangedAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Copy now" }).ClickAsync());
        await visitor.GoAsync("colony/" + colony);
        await page.GetByText("This one was made before the last entry.").WaitForAsync();
        await Assertions.Expect(Sentence(page)).ToHaveTextAsync(before, new() { UseInnerText = true });
        var room = await HeightAsync(page.Locator(".newsroom"));

        await visitor.LetWorkersGoAsync();
        await page.GetByText("This one was made before the last entry.").WaitForAsync(Gone);
        Assert.InRange(await HeightAsync(page.Locator(".newsroom")) - room, -32, 32);
        Assert.DoesNotContain("Without a count", await Sentence(page).InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(visitor.Faults);
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1440, 900)]
    public async Task ApiaryPage_ForecastComes_NothingMovesUnderTheFinger(int width, int height)
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, width, height);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.HoldWorkersAsync();
        await visitor.RegisterAsync("Brook side", "1-8");
        await page.GetByText("The forecast").First.WaitForAsync();
        var before = await TopAsync(page.Locator(".tiles"));
        await visitor.LetWorkersGoAsync();
        await Sentence(page).WaitForAsync();
        await page.Locator("progress").WaitForAsync(Gone);
        Assert.InRange(await TopAsync(page.Locator(".tiles")) - before, -32, 32);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task AheadPage_WhileItFills_StaysAtHandAndCanBeStopped()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, 1440, 900);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.HoldWorkersAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the demo" }).ClickAsync();
        await page.GetByText("from seed 4711").WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "What lies ahead" }).ClickAsync();
        await page.Locator("progress").WaitForAsync();

        // The keeper goes on while it works: a form opens, takes what is typed, and is left again.
        await visitor.GoAsync("apiary/new");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Typed meanwhile");
        await Assertions.Expect(page.GetByLabel("Name", new() { Exact = true })).ToHaveValueAsync("Typed meanwhile");
        await visitor.GoAsync("ahead");
        await page.Locator("progress").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop", Exact = true }).ClickAsync();
        await visitor.LetWorkersGoAsync();
        await page.Locator("progress").WaitForAsync(Gone);
        await visitor.HoldWorkersAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^(Work out the forecasts|Go on with the other)") }).ClickAsync();
        await page.Locator("progress").WaitForAsync();
        await visitor.LetWorkersGoAsync();

        await page.Locator("progress").WaitForAsync(new() { State = WaitForSelectorState.Detached, Timeout = 180_000 });
        await Assertions.Expect(page.Locator(".card .say")).ToHaveCountAsync(3);
        await visitor.GoAsync(string.Empty);
        await page.Locator("p.ahead").Nth(2).WaitForAsync();
        Assert.True(await page.Locator("article.season .fd-fan:visible").CountAsync() > 0);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task ColonyPage_WithoutNetworkFromAColdStart_ForecastIsWorkedOutBesideThePage()
    {
        var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, keepsProgram: true);
        await OrchardAsync(visitor, 2);
        await visitor.OfflineReadyAsync();
        var address = new Uri(visitor.Page.Url).AbsolutePath;
        await visitor.Page.CloseAsync();
        await host.DisposeAsync();

        var page = await visitor.NewPageAsync();
        await page.GotoAsync(address);
        await page.Locator(".tiles a").First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Colony 1", Exact = true }).WaitForAsync();
        await Sentence(page).WaitForAsync();
        await page.GetByText("What would a control change?").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the difference" }).ClickAsync();
        await page.GetByText("Supposed:").WaitForAsync();
        Assert.EndsWith("js/reckoner.js", Assert.Single(page.Workers).Url, StringComparison.Ordinal);
        Assert.Empty(visitor.Faults);
    }

    [Theory]
    [InlineData(NoWorkers)]
    [InlineData("window.Worker = class { constructor() { throw new DOMException('refused by policy', 'SecurityError'); } }")]
    [InlineData("{ const Own = Worker; window.Worker = class { constructor(url, how) { return new Own('/js/is-not-there.js', how); } }; }")]
    public async Task ColonyPage_NoWorkerCanRun_SaysSoAndWorksItOutWhenAsked(string barred)
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await page.AddInitScriptAsync(barred);
        await OrchardAsync(visitor, 2);
        await page.Locator(".tiles a").First.ClickAsync();
        await page.GetByText("This browser cannot work beside the page").WaitForAsync();
        await Assertions.Expect(Sentence(page)).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Work out the forecast" }).ClickAsync();
        await Sentence(page).WaitForAsync();
        await page.GetByText("What would a control change?").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the difference" }).ClickAsync();
        await page.GetByText("Supposed:").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    private static ILocator Sentence(IPage page) => page.Locator("section.card", new() { HasText = "Where it is heading" }).Locator("p.say");

    private static Task<double> HeightAsync(ILocator what) => what.EvaluateAsync<double>("one => one.getBoundingClientRect().height");

    private static Task<double> TopAsync(ILocator what) => what.EvaluateAsync<double>("one => one.getBoundingClientRect().top + scrollY");

    private static async Task OrchardAsync(Visitor visitor, int colonies)
    {
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Brook side", $"1-{colonies}");
    }

    private static Task UntilCoursesKeptAsync(IPage page, int count)
    {
        const string Count =
            "new Promise((done, failed) => { const open = indexedDB.open('foundress-forecasts'); open.onerror = () => failed(open.error); open.onsuccess = () => { const all = open.result.transaction('courses').objectStore('courses').count(); all.onsuccess = () => { open.result.close(); done(all.result); }; }; })";
        return Patiently.UntilAsync(async () => await page.EvaluateAsync<int>(Count) >= count);
    }

    private static JsonObject Jar(string colony, int mites) => new()
    {
        ["id"] = "01980000-0000-7000-8000-000000000001",
        ["operation"] = "home",
        ["author"] = "helper",
        ["device"] = "other",
        ["clock"] = "019800000000-0000",
        ["kind"] = "jar",
        ["schema"] = 1,
        ["payload"] = new JsonObject
        {
            ["on"] = ControlYard.Today.AddDays(-1).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
            ["method"] = "alcohol-wash",
            ["passes"] = new JsonArray(mites),
            ["bees"] = new JsonObject { ["basis"] = "Counted", ["count"] = 300, ["logSpread"] = 0 },
            ["colony"] = colony,
        },
    };
}
