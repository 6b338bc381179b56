using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>Repeat passes, counted and weighed jars, mite falls and opened brood on the screens.</summary>
public sealed class JarPartTests(PublishedApp app)
{
    // Seber & Le Cren 1967: 18 then 2 are 20.25 mites.
    [Fact]
    public async Task QuickJar_TwoPasses_ShowTheEstimateBesideTheCountedLevel()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync("jar");
        await page.GetByLabel("Mites", new() { Exact = true }).FillAsync("18");
        await page.GetByLabel("Bees", new() { Exact = true }).FillAsync("310");
        await page.GetByRole(AriaRole.Button, new() { Name = "Same bees once more" }).ClickAsync();
        await page.GetByLabel("Mites, pass 2", new() { Exact = true }).FillAsync("2");
        await page.Locator(".big", new() { HasText = "6.5" }).WaitForAsync();
        await page.GetByText("About 20 were there (20 to 22").WaitForAsync();
        await page.GetByText("once more is not worth it").WaitForAsync();
        await page.GetByText("Show the working").ClickAsync();
        await page.GetByText("18² / (18 − 2) = 20.25").WaitForAsync();
        await page.GetByText("What the method may leave on the bees").ClickAsync();
        await page.GetByText("7.2 (4.4 to 11.1)").WaitForAsync();

        await page.GetByLabel("Mites, pass 2", new() { Exact = true }).FillAsync("19");
        await page.GetByText("(18, then 19)").First.WaitForAsync();
        await page.GetByText("no number is given").First.WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task QuickJar_WeighedWithACountedSample_IsKeptAndCorrectedAsItWas()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync("jar");
        await page.GetByLabel("Mites", new() { Exact = true }).FillAsync("9");
        await Way(page, "Weighed").ClickAsync();
        await page.GetByLabel("Weight of the bees, grams", new() { Exact = true }).FillAsync("31.5");
        await page.GetByLabel("Weight of one bee").SelectOptionAsync("sample");
        await page.GetByLabel("Bees counted", new() { Exact = true }).FillAsync("100");
        await page.GetByLabel("What the counted bees weigh, grams", new() { Exact = true }).FillAsync("40");
        await page.GetByText("weigh more than all bees").First.WaitForAsync();
        await page.GetByLabel("What the counted bees weigh, grams", new() { Exact = true }).FillAsync("10.4");
        await page.GetByText("Taken as about 303 bees, usually between 284 and 324").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await page.GetByText("about 303, weighed: 31.5 g, 100 counted bees of it weighing 10.4 g").WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Correct" }).ClickAsync();
        await page.GetByText("Taken as about 303 bees").First.WaitForAsync();
        await Assertions.Expect(page.GetByLabel("What the counted bees weigh, grams", new() { Exact = true })).ToHaveValueAsync("10.4");
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task CountedJars_Three_TeachTheNextUncountedJarAndLeaveOldOnesAlone()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync("settings/jars");
        await page.GetByText("No counted jar of this book names the measure").WaitForAsync();

        await visitor.GoAsync("jar");
        await page.GetByLabel("Mites", new() { Exact = true }).FillAsync("9");
        await Way(page, "A measure").ClickAsync();
        await page.GetByText("Taken as about 300 bees, usually").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await page.GetByText("about 300, assumed: Half a US cup (118 mL)").WaitForAsync();
        var old = new Uri(page.Url).AbsolutePath[1..];

        foreach (var bees in new[] { "350", "360", "340" })
        {
            await visitor.GoAsync("jar");
            await page.GetByLabel("Mites", new() { Exact = true }).FillAsync("2");
            await Way(page, "Counted").ClickAsync();
            await page.GetByLabel("Bees", new() { Exact = true }).FillAsync(bees);
            await page.GetByLabel("Taken with").SelectOptionAsync("half-cup-us");
            await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
            await page.GetByText($"{bees}, counted, taken with: Half a US cup").WaitForAsync();
        }

        // Centre (2 ln 300 + 3 jars) / 5 on the logarithm: 329 bees (Gelman et al. 2013, section 3.3).
        await visitor.GoAsync("jar");
        await page.GetByLabel("Mites", new() { Exact = true }).FillAsync("9");
        await Way(page, "A measure").ClickAsync();
        await page.GetByText("Taken as about 329 bees, as 3 counted jars of yours teach").WaitForAsync();

        await visitor.GoAsync("settings/jars");
        await page.GetByText("Uncounted jars of your measure are taken as about 329 bees").WaitForAsync();
        await page.RunAxe();
        var check = new PageCheck();
        await check.LookAsync(page, "scoops");
        Assert.Empty(check.Faults);

        await visitor.GoAsync(old);
        await page.GetByText("about 300, assumed: Half a US cup (118 mL)").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task MiteFall_Kept_StandsOnTheColonysPageOnItsOwnScale()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Brook side", "1-2");
        await visitor.GoAsync("settings/judging");
        await page.GetByLabel("Judge mite falls by").SelectOptionAsync("uk-fall-any-season");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the settings" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Settings" }).WaitForAsync();
        await visitor.GoAsync("");
        await page.GetByRole(AriaRole.Link, new() { Name = "Brook side" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "1 no jar yet" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Mite fall" }).ClickAsync();
        await page.GetByLabel("Mites on the board", new() { Exact = true }).FillAsync("180");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the count" }).ClickAsync();
        await page.GetByText("The days are missing.").WaitForAsync();
        await page.GetByLabel("Days the board lay", new() { Exact = true }).FillAsync("10");
        await page.GetByRole(AriaRole.Group, new() { Name = "Has the colony brood?" }).GetByText("Yes").ClickAsync();
        await page.Locator(".big", new() { HasText = "18.0" }).WaitForAsync();
        await page.GetByText("Over the line of 9 a day").WaitForAsync();
        await page.GetByText("All mites in the colony: somewhere from").WaitForAsync();
        await page.RunAxe();
        var check = new PageCheck();
        await check.LookAsync(page, "fall");
        await page.GetByText("A control was working or had just ended").ClickAsync();
        await page.GetByText("the fall is its kill, not natural death").WaitForAsync();
        await page.GetByText("A control was working or had just ended").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the count" }).ClickAsync();

        await page.GetByRole(AriaRole.Heading, new() { Name = "Counts on other scales" }).WaitForAsync();
        await page.Locator("strong", new() { HasText = "18.0 a day (15.5 to 20.8)" }).WaitForAsync();
        await page.GetByText("Mite fall: 180 mites in 10 days: with brood").WaitForAsync();
        await page.GetByText("No jar yet.").First.WaitForAsync();
        await page.GetByText("What it says").ClickAsync();
        await check.LookAsync(page, "colony-fall");
        Assert.Empty(check.Faults);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task OpenedBrood_Kept_GivesTheShareOfCells()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Brook side", "1-2");
        await page.GetByRole(AriaRole.Link, new() { Name = "1 no jar yet" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Opened brood" }).ClickAsync();
        await page.GetByLabel("Cells opened", new() { Exact = true }).FillAsync("100");
        await page.GetByLabel("Cells with at least one mite", new() { Exact = true }).FillAsync("12");
        await page.GetByLabel("Mother mites in all cells", new() { Exact = true }).FillAsync("3");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the count" }).ClickAsync();
        await page.GetByText("3 mites do not fit 12 infested cells").WaitForAsync();
        await page.GetByLabel("Mother mites in all cells", new() { Exact = true }).FillAsync("15");
        await page.Locator(".big", new() { HasText = "12.0" }).WaitForAsync();
        await page.RunAxe();
        var check = new PageCheck();
        await check.LookAsync(page, "brood");
        Assert.Empty(check.Faults);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the count" }).ClickAsync();
        await page.Locator("strong", new() { HasText = "12.0 % (6.4 to 20.0)" }).WaitForAsync();
        await page.GetByText("Drone brood opened: 12 of 100 cells infested, 15 mother mites").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    // How the number of bees is known, by its chip.
    private static ILocator Way(IPage page, string name) => page.GetByRole(AriaRole.Group, new() { Name = "How is the number of bees known?" }).GetByText(name);
}
