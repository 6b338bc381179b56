using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class AccessTests(PublishedApp app)
{
    private static readonly string[] Themes = ["light", "dark", "sun"];
    private static readonly (int Width, int Height)[] Screens = [(390, 844), (1440, 900)];

    // axe was put into the page once; running it again from there is many times faster than putting it in again.
    private const string Axe = """
        async () => (await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], resultTypes: ['violations'] }))
          .violations.map(v => `${v.id}: ${v.nodes.map(n => n.html.slice(0, 160) + ' ' + (n.any[0]?.message ?? '')).join(' | ')}`)
        """;

    // What a thumb must hit: at least 44 px (64 px for the field), unless it is a link inside a sentence.
    private const string SmallTargets = """
        least => [...document.querySelectorAll('a[href], button, input, select, textarea, summary, label.chip')]
          .filter(e => !(e.matches('a') && getComputedStyle(e).display === 'inline') && !e.matches('.skip') && e.checkVisibility())
          .map(e => { const t = e.matches('.toggle input, .chip input') ? e.closest('label') : e; const r = t.getBoundingClientRect(); return { e, w: r.width, h: r.height }; })
          .filter(t => t.w > 0 && (t.h < least - 0.5 || t.w < least - 0.5))
          .map(t => `${t.e.tagName}.${t.e.className} "${(t.e.innerText || t.e.ariaLabel || t.e.type || '').slice(0, 30)}" ${t.w.toFixed(1)}×${t.h.toFixed(1)}`)
        """;

    private readonly List<string> _faults = [];

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
        await page.GetByRole(AriaRole.Link, new() { Name = "7 not inspected yet" }).ClickAsync();
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
        await CheckAsync(page, "colony-struck");

        await visitor.GoAsync("settings");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Settings" }).WaitForAsync();
        await CheckAsync(page, "settings");
        Assert.True(_faults.Count == 0, string.Join("\n", _faults));
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

    private async Task CheckAsync(IPage page, string name)
    {
        foreach (var (width, height) in Screens)
        {
            await page.SetViewportSizeAsync(width, height);
            foreach (var theme in Themes)
            {
                await page.EvaluateAsync("theme => { document.documentElement.dataset.theme = theme; }", theme);
                var where = $"{name}, {theme}, {width} px: ";
                if (Environment.GetEnvironmentVariable("FOUNDRESS_SHOTS") is { Length: > 0 } folder)
                    await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{theme}-{width}.png") });
                _faults.AddRange((await page.EvaluateAsync<string[]>(Axe)).Select(fault => where + fault));
                _faults.AddRange((await page.EvaluateAsync<string[]>(SmallTargets, theme == "sun" ? 64 : 44)).Select(fault => where + "small target " + fault));
                var overflow = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth");
                if (overflow > 0)
                    _faults.Add($"{where}{overflow} px wider than the screen");
            }
        }

        await page.SetViewportSizeAsync(Screens[0].Width, Screens[0].Height);
    }
}
