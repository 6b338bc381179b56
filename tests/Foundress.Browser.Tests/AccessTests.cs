using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class AccessTests(PublishedApp app)
{
    private readonly PageCheck _check = new();

    [Fact]
    public async Task EveryPage_EveryThemeAndScreen_PassesAxeTargetsAndWidth()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await page.RunAxe();
        await CheckAsync(page, "front-empty");

        await visitor.RegisterAsync("Hazel bank", "1-12");
        await CheckAsync(page, "apiary");
        await visitor.GoAsync("apiary/new");
        await page.GetByText("Where it lies").ClickAsync();
        await page.GetByLabel("Latitude, degrees", new() { Exact = true }).FillAsync("123");
        await page.GetByRole(AriaRole.Button, new() { Name = "Register the apiary" }).ClickAsync();
        await page.Locator(".fault").First.WaitForAsync();
        await CheckAsync(page, "apiary-form-faults");
        await page.GetByRole(AriaRole.Button, new() { Name = "Empty the form" }).ClickAsync();

        await visitor.GoAsync("");
        await page.GetByRole(AriaRole.Link, new() { Name = "Hazel bank" }).WaitForAsync();
        await CheckAsync(page, "front");
        await page.GetByRole(AriaRole.Link, new() { Name = "Hazel bank" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Register colonies" }).ClickAsync();
        await page.GetByLabel("Numbers or names").WaitForAsync();
        await CheckAsync(page, "colonies-form");

        await page.GoBackAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "7 no jar yet" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Inspect" }).WaitForAsync();
        var colony = new Uri(page.Url).AbsolutePath[1..];
        foreach (var action in new[] { "move", "split", "unite", "died", "edit", "inspect" })
        {
            await visitor.GoAsync($"{colony}/{action}");
            await page.Locator("form").WaitForAsync();
            await CheckAsync(page, action);
        }

        await page.GetByLabel("Frames of bees", new() { Exact = true }).FillAsync("8");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the inspection" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike out: Inspection" }).ClickAsync();
        await CheckAsync(page, "colony-striking");
        await page.GetByLabel("Why is it struck out?").FillAsync("Wrong hive");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike it out" }).ClickAsync();
        await page.Locator("del").WaitForAsync();
        // The bar lies over whatever the page is scrolled to; without it every target of the long page is measured.
        await page.Locator(".undobar button").Last.ClickAsync();
        await CheckAsync(page, "colony-struck");

        await visitor.GoAsync("settings");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Settings" }).WaitForAsync();
        await CheckAsync(page, "settings");
        Assert.True(_check.Faults.Count == 0, string.Join("\n", _check.Faults));
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Theme_Chosen_HoldsAfterReload()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync("settings");
        await visitor.Page.GetByText("for the field").ClickAsync();
        await visitor.Page.ReloadAsync();
        Assert.Equal("sun", await visitor.Page.EvaluateAsync<string>("document.documentElement.dataset.theme"));
        await Assertions.Expect(visitor.Page.GetByRole(AriaRole.Radio, new() { Name = "Sun" })).ToBeCheckedAsync();
    }

    private Task CheckAsync(IPage page, string name) => _check.LookAsync(page, name);
}
