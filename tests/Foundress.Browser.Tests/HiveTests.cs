using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class HiveTests(PublishedApp app)
{
    [Fact]
    public async Task Queen_LeftWithASwarm_HistoryTellsTheShare()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await EnterColonyAsync(visitor);
        await page.GetByRole(AriaRole.Link, new() { Name = "Queen", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep what happened" }).ClickAsync();
        await page.GetByText("Nothing is chosen. Choose what happened to the queen.").WaitForAsync();

        await page.GetByText("Left with a swarm").ClickAsync();
        await page.GetByLabel("Share of the bees that left", new() { Exact = true }).FillAsync("150");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep what happened" }).ClickAsync();
        await page.GetByText("150 is out of range. Type a number from 0 to 100.").WaitForAsync();
        await page.GetByLabel("Share of the bees that left", new() { Exact = true }).FillAsync("60");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep what happened" }).ClickAsync();
        await page.GetByText("Swarmed with 60 % of the bees").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Queen_CagedThenStruck_IsCrossedOut()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await EnterColonyAsync(visitor);
        await page.GetByRole(AriaRole.Link, new() { Name = "Queen", Exact = true }).ClickAsync();
        await page.GetByText("Caged", new() { Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Share of the bees that left", new() { Exact = true })).ToHaveCountAsync(0);
        await page.GetByLabel("Note").FillAsync("brood break");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep what happened" }).ClickAsync();
        await page.GetByText("Queen caged: brood break").WaitForAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Strike out: Queen caged" }).ClickAsync();
        await page.GetByLabel("Why is it struck out?").FillAsync("Wrong hive");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike it out" }).ClickAsync();
        await page.Locator("del", new() { HasText = "Queen caged" }).WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Beginning_Package_AsksForNoBroodAndTellsTheWeight()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await EnterColonyAsync(visitor);
        await page.GetByRole(AriaRole.Link, new() { Name = "How it began" }).ClickAsync();
        await page.GetByText("A nucleus").ClickAsync();
        await page.GetByLabel("Frames of brood", new() { Exact = true }).WaitForAsync();
        await page.GetByText("A package", new() { Exact = true }).ClickAsync();
        await page.GetByLabel("Frames of brood", new() { Exact = true }).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await page.GetByLabel("Weight of the bees", new() { Exact = true }).FillAsync("1.4");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep how it began" }).ClickAsync();
        await page.GetByText("Began as a package: 1.4 kg of bees").WaitForAsync();
        await page.ReloadAsync();
        await page.GetByText("Began as a package: 1.4 kg of bees").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Brood_DroneCombTaken_NeedsAShare()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await EnterColonyAsync(visitor);
        await page.GetByRole(AriaRole.Link, new() { Name = "Brood taken out" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep what was taken" }).ClickAsync();
        await page.GetByText("No share is given.").WaitForAsync();
        await page.GetByLabel("How much of it", new() { Exact = true }).FillAsync("80");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep what was taken" }).ClickAsync();
        await page.GetByText("80 % of the drone brood taken out").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Forms_EveryThemeAndScreen_PassAxeTargetsAndWidth()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        var check = new PageCheck();
        await EnterColonyAsync(visitor);
        await page.RunAxe();
        var colony = new Uri(page.Url).AbsolutePath[1..];
        foreach (var form in new[] { "queen", "began", "brood" })
        {
            await visitor.GoAsync($"{colony}/{form}");
            await page.Locator("form").WaitForAsync();
            await check.LookAsync(page, form);
        }

        Assert.True(check.Faults.Count == 0, string.Join("\n", check.Faults));
    }

    private static async Task EnterColonyAsync(Visitor visitor)
    {
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Brook side", "1-2");
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "1 no jar yet" }).ClickAsync();
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Inspect" }).WaitForAsync();
    }
}
