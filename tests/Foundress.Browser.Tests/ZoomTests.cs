using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>Large type, narrow screens and scripts that run from right to left (WCAG 2.2, 1.4.4 and 1.4.10).</summary>
public sealed class ZoomTests(PublishedApp app)
{
    private static readonly string[] Places = ["", "jar", "due", "register", "labels", "rounds", "rounds/new", "ahead", "breeding", "settings", "settings/controls", "settings/judging"];

    [Fact]
    public async Task EveryMainPage_ZoomedOrRightToLeft_FitsTheScreen()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the demo" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "What is due" }).WaitForAsync();
        var apiary = (await page.Locator("article.season h2 a").First.GetAttributeAsync("href"))!;
        await visitor.GoAsync(apiary);
        var colony = (await page.Locator(".tiles a").First.GetAttributeAsync("href"))!;
        var control = (await page.Locator("a[href^='control/']").First.GetAttributeAsync("href"))!;
        var id = apiary.Split('/')[1];
        var faults = new List<string>();
        foreach (var place in (string[])[.. Places, apiary, colony, control, $"choose/{id}", $"treat/{id}"])
        {
            await visitor.GoAsync(place);
            await page.Locator("h1").WaitForAsync();
            // 1280 px at 400 % is a screen of 320 px; 200 % type on a phone is what the system's setting for large type gives.
            await LookAsync(place, "400 %", 320, 100, "ltr");
            await LookAsync(place, "200 % type", 390, 200, "ltr");
            await LookAsync(place, "from right to left", 390, 100, "rtl");
            await LookAsync(place, "from right to left", 1440, 100, "rtl");
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
        Assert.Empty(visitor.Faults);

        async Task LookAsync(string place, string how, int width, int type, string direction)
        {
            await page.SetViewportSizeAsync(width, 844);
            await page.EvaluateAsync("given => { document.documentElement.style.fontSize = given[0] + '%'; document.documentElement.dir = given[1]; }", new object[] { type, direction });
            var wide = await page.EvaluateAsync<string[]>("""
                () => document.documentElement.scrollWidth <= innerWidth ? [] : [`${document.documentElement.scrollWidth - innerWidth} px too wide`,
                  ...[...document.querySelectorAll('main *')].filter(e => !e.closest('.tablewrap, svg') && (e.getBoundingClientRect().right > innerWidth + 1 || e.getBoundingClientRect().left < -1)).slice(0, 3).map(e => `${e.tagName}.${e.className} "${e.textContent.trim().slice(0, 30)}"`)]
                """);
            if (wide.Length > 0)
                faults.Add($"/{place}, {how}, {width} px: {string.Join(" | ", wide)}");
        }
    }
}
