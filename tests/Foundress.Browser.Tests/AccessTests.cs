using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class AccessTests(PublishedApp app)
{
    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
    };

    // What a thumb must hit: at least 44 px (64 px for the field), unless it is a link inside a sentence.
    private const string SmallTargets = """
        least => [...document.querySelectorAll('a[href], button, input, select, textarea, summary, label.chip')]
          .filter(e => !(e.matches('a') && getComputedStyle(e).display === 'inline') && !e.matches('.skip') && e.checkVisibility())
          .map(e => { const t = e.matches('.toggle input') ? e.closest('label') : e; const r = t.getBoundingClientRect(); return { e, w: Math.round(r.width * 10) / 10, h: Math.round(r.height * 10) / 10 }; })
          .filter(t => t.w > 0 && (t.h < least - 0.5 || t.w < Math.min(least, 64) - 0.5))
          .map(t => `${t.e.tagName}.${t.e.className} "${(t.e.innerText || t.e.ariaLabel || t.e.type || '').slice(0, 30)}" ${t.w}×${t.h}`)
        """;

    [Theory]
    [InlineData("light", 390, 844)]
    [InlineData("dark", 390, 844)]
    [InlineData("sun", 390, 844)]
    [InlineData("light", 1440, 900)]
    [InlineData("dark", 1440, 900)]
    [InlineData("sun", 1440, 900)]
    public async Task EveryPage_InTheme_PassesAxeAndTargetSizes(string theme, int width, int height)
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, width, height);
        var page = visitor.Page;
        await visitor.OpenAsync("settings");
        await page.EvaluateAsync("theme => { localStorage.setItem('theme', theme); document.documentElement.dataset.theme = theme; }", theme);
        await visitor.GoAsync("");
        await CheckAsync(page, theme, "empty-front");
        await visitor.RegisterAsync("Hazel bank", "1-12");
        await CheckAsync(page, theme, "apiary");
        await visitor.GoAsync("apiary/new");
        await page.GetByText("Where it lies").ClickAsync();
        await page.GetByLabel("Latitude, degrees").FillAsync("123");
        await page.GetByRole(AriaRole.Button, new() { Name = "Register the apiary" }).ClickAsync();
        await page.Locator(".fault").First.WaitForAsync();
        await CheckAsync(page, theme, "apiary-form-faults");
        await page.GetByRole(AriaRole.Button, new() { Name = "Empty the form" }).First.ClickAsync();
        await visitor.GoAsync("");
        await CheckAsync(page, theme, "front");
        await page.GetByRole(AriaRole.Link, new() { Name = "Hazel bank" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Register colonies" }).ClickAsync();
        await page.GetByLabel("Numbers or names").WaitForAsync();
        await CheckAsync(page, theme, "colonies-form");
        await page.GoBackAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "7 not inspected yet" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Inspect" }).WaitForAsync();
        var colony = new Uri(page.Url).AbsolutePath[1..];
        foreach (var action in new[] { "move", "split", "unite", "died", "edit", "inspect" })
        {
            await visitor.GoAsync($"{colony}/{action}");
            await page.Locator("form").WaitForAsync();
            await CheckAsync(page, theme, action);
        }

        await page.GetByLabel("Frames of bees", new() { Exact = true }).FillAsync("8");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the inspection" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike out: Inspection" }).ClickAsync();
        await CheckAsync(page, theme, "colony-striking");
        await page.GetByLabel("Why is it struck out?").FillAsync("Wrong hive");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike it out" }).ClickAsync();
        await page.Locator("del").WaitForAsync();
        await CheckAsync(page, theme, "colony-struck");
        await visitor.GoAsync("settings");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Settings" }).WaitForAsync();
        await CheckAsync(page, theme, "settings");
        Assert.Empty(visitor.Faults);
    }

    private static async Task CheckAsync(IPage page, string theme, string name)
    {
        var width = page.ViewportSize!.Width;
        if (Environment.GetEnvironmentVariable("FOUNDRESS_SHOTS") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{theme}-{width}.png"), FullPage = width > 1000 });
        var found = (await page.RunAxe(Rules)).Violations
            .Select(violation => $"{violation.Id}: {string.Join(" | ", violation.Nodes.Select(node => node.Html))}");
        Assert.True(!found.Any(), $"{name}, {theme}, {width} px:\n{string.Join("\n", found)}");
        var small = await page.EvaluateAsync<string[]>(SmallTargets, theme == "sun" ? 64 : 44);
        Assert.True(small.Length == 0, $"{name}, {theme}, {width} px: targets too small:\n{string.Join("\n", small)}");
        var overflow = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth");
        Assert.True(overflow <= 0, $"{name}, {theme}, {width} px: {overflow} px wider than the screen.");
    }
}
