using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class SeasonsTests(PublishedApp app)
{
    [Fact]
    public async Task Demo_OpenedWithoutNetworkAndRemoved_LeavesTheKeepersOwnBook()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, keepsProgram: true);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.OfflineReadyAsync();
        await visitor.Context.SetOfflineAsync(true);
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the demo" }).ClickAsync();
        await page.GetByText("from seed 4711").WaitForAsync();
        await Assertions.Expect(page.Locator("article.season")).ToHaveCountAsync(3);
        await Assertions.Expect(page.Locator("article.season .drawing.narrow svg:visible")).ToHaveCountAsync(3);
        await Assertions.Expect(page.Locator("article.season .drawing.wide svg:visible")).ToHaveCountAsync(0);
        await page.SetViewportSizeAsync(1440, 900);
        await Assertions.Expect(page.Locator("article.season .drawing.wide svg:visible")).ToHaveCountAsync(3);
        await Assertions.Expect(page.Locator("article.season .drawing.narrow svg:visible")).ToHaveCountAsync(0);

        await page.ReloadAsync();
        await page.GetByText("Invented data.").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Year before" }).ClickAsync();
        await page.Locator("article.season .say", new() { HasText = "of them over the line." }).First.WaitForAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Remove the demo" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Where to begin" }).WaitForAsync();
        await page.ReloadAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Where to begin" }).WaitForAsync();
        await Assertions.Expect(page.GetByText("Invented data.")).ToHaveCountAsync(0);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Demo_ServerInReach_IsNotGivenTheInventedRecords()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Look at the demo" }).ClickAsync();
        await visitor.Page.GetByText("from seed 4711").WaitForAsync();
        await visitor.RegisterAsync("Written in the demo", "1-2");
        await visitor.GoAsync("settings");
        await visitor.UntilExchangedAsync(() => visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Copy now" }).ClickAsync());
        Assert.Empty(host.Entries("demo"));
        await visitor.UntilExchangedAsync(() => visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Remove the demo" }).ClickAsync());
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Where to begin" }).WaitForAsync();
        Assert.Empty(host.Entries("demo"));
        Assert.Empty(host.Entries("home"));
    }

    [Fact]
    public async Task DemoPages_EveryThemeAndScreen_PassAxeTargetsAndWidth()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        var check = new PageCheck();
        await visitor.OpenAsync();
        await page.RunAxe();
        await check.LookAsync(page, "seasons-empty");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the demo" }).ClickAsync();
        await page.GetByText("from seed 4711").WaitForAsync();
        await check.LookAsync(page, "seasons");
        await page.GetByText("Show as a table").First.ClickAsync();
        await page.Locator(".season table").First.WaitForAsync();
        await check.LookAsync(page, "seasons-table");
        await page.Locator("article.season h2 a").First.ClickAsync();
        await page.Locator(".tiles a").First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Its season" }).WaitForAsync();
        await page.Locator(".jars li").First.WaitForAsync();
        await check.LookAsync(page, "colony");
        await page.GetByText("What would a control change?").WaitForAsync(new() { Timeout = 120_000 });
        Assert.True(await page.Locator(".fd-fan:visible").CountAsync() > 0 || await page.GetByText("per 100 today").CountAsync() > 0);
        await check.LookAsync(page, "colony-forecast");
        await visitor.GoAsync("breeding");
        await page.GetByText("Truly in the slowest fifth").WaitForAsync();
        await check.LookAsync(page, "breeding");
        await visitor.GoAsync("rounds");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Finished" }).WaitForAsync();
        await check.LookAsync(page, "rounds");
        await page.Locator("a[href$='/result']").First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Next", Exact = true }).WaitForAsync();
        await check.LookAsync(page, "round-result");
        Assert.Empty(check.Faults);
        Assert.Empty(visitor.Faults);
    }
}
