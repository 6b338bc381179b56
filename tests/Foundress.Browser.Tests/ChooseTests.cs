using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>Choosing a control: what a day allows, plans beside each other, one that is kept.</summary>
public sealed class ChooseTests(PublishedApp app)
{
    private static readonly LocatorWaitForOptions Long = new() { Timeout = 120_000 };

    [Fact]
    public async Task ChoosePage_PlansSearched_PassesAxeTargetsAndWidthAndAPlanIsKept()
    {
        var check = new PageCheck();
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        var apiary = await OrchardAsync(visitor);
        await page.RunAxe();
        await visitor.GoAsync("choose/" + apiary);
        await page.GetByRole(AriaRole.Heading, new() { Name = "Which control, and when" }).WaitForAsync();
        await page.GetByText("Something must be known first").WaitForAsync();
        await page.GetByText("Ruled out on this day, and why").First.ClickAsync();
        await check.LookAsync(page, "choose");

        await page.GetByRole(AriaRole.Button, new() { Name = "Search plans" }).ClickAsync();
        await page.Locator(".plan").First.WaitForAsync(Long);
        Assert.InRange(await page.Locator(".plan").CountAsync(), 1, 8);
        await page.Locator(".plan h2", new() { HasText = "Nothing done" }).WaitForAsync();
        Assert.Equal(await page.Locator(".plan").CountAsync(), await page.Locator(".plan svg").CountAsync());
        await page.GetByText("What was dropped, and why").ClickAsync();
        await check.LookAsync(page, "choose-plans");

        var record = page.GetByRole(AriaRole.Link, new() { Name = "Record" }).Last;
        Assert.Matches($"treat/{apiary}\\?agent=[a-z-]+&start=\\d{{4}}-\\d\\d-\\d\\d&colonies=[0-9a-f-]{{36}}", await record.GetAttributeAsync("href"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this plan" }).First.ClickAsync();
        await page.GetByText("The plan is kept").WaitForAsync();
        await visitor.UntilKeptAsync("store.readAfter('home', 0).then(all => JSON.stringify(all).includes('control-plan'))");
        Assert.True(check.Faults.Count == 0, string.Join("\n", check.Faults));
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task ChoosePage_SearchStopped_LeavesThePageAtHand()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, 1440, 900);
        var page = visitor.Page;
        await visitor.GoAsync("choose/" + await OrchardAsync(visitor));
        await visitor.HoldWorkersAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Search plans" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop" }).ClickAsync();
        await visitor.LetWorkersGoAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Search plans" }).WaitForAsync();
        await Assertions.Expect(page.Locator(".plan")).ToHaveCountAsync(0);

        await page.GetByRole(AriaRole.Textbox, new() { Name = "Chance of being over the line that you can bear" }).FillAsync("80");
        await page.GetByRole(AriaRole.Button, new() { Name = "Search plans" }).ClickAsync();
        await page.Locator(".notice", new() { HasText = "80 is out of range. Type a number from 1 to 50." }).First.WaitForAsync();
        await page.GetByRole(AriaRole.Textbox, new() { Name = "Chance of being over the line that you can bear" }).FillAsync("10");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make 10 in 100 my setting" }).ClickAsync();
        await page.GetByText("From now on 10 in 100 is what you can bear.").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    private static async Task<string> OrchardAsync(Visitor visitor)
    {
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Hazel bank", "1-2");
        return new Uri(visitor.Page.Url).AbsolutePath.Split('/')[^1];
    }
}
