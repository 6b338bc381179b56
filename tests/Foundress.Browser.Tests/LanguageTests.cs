using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>The program in another language than English: chosen by the browser or by hand, without a network, and on every page.</summary>
public sealed class LanguageTests(PublishedApp app, ITestOutputHelper output)
{
    private static readonly string[] Places =
    [
        "", "jar", "due", "register", "labels", "rounds", "rounds/new", "ahead", "breeding", "settings", "settings/controls", "settings/judging",
        "settings/jars", "apiary/new", "colony/new", "jar/loose",
    ];

    [Fact]
    public async Task Browser_InGerman_OpensInGermanAndKeepsItWithoutNetwork()
    {
        var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, locale: "de-AT", keepsProgram: true);
        await visitor.OpenAsync("apiary/new");
        Assert.Equal("de", await visitor.Page.EvaluateAsync<string>("document.documentElement.lang"));
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Einen Stand anlegen" }).WaitForAsync();
        await visitor.OfflineReadyAsync();
        await visitor.UntilAsync("import('/js/update.js').then(update => update.offlineState() === 'ready')");
        await host.DisposeAsync();
        var tab = await visitor.NewPageAsync();
        await tab.GotoAsync("/apiary/new");
        await tab.GetByRole(AriaRole.Heading, new() { Name = "Einen Stand anlegen" }).WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Browser_InEnglish_FetchesNoTextsOfOtherLanguages()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, keepsProgram: true);
        await visitor.OpenAsync();
        await visitor.OfflineReadyAsync();
        Assert.Empty(await visitor.Page.EvaluateAsync<string[]>("performance.getEntriesByType('resource').map(one => one.name).filter(name => name.includes('/_framework/de/'))"));
        Assert.Equal(0, await visitor.Page.EvaluateAsync<int>("caches.keys().then(names => Promise.all(names.map(name => caches.open(name).then(cache => cache.keys())))).then(lists => lists.flat().filter(request => request.url.includes('/_framework/de/')).length)"));
    }

    [Fact]
    public async Task Settings_LanguageChosen_IsSpokenAndNumbersFollow()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync("settings");
        await visitor.Page.GetByText("Deutsch", new() { Exact = true }).ClickAsync();
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Einstellungen" }).WaitForAsync();
        await visitor.Page.ReloadAsync();
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Einstellungen" }).WaitForAsync();
        Assert.Equal("1,5", await visitor.Page.EvaluateAsync<string>("new Intl.NumberFormat(document.documentElement.lang).format(1.5)"));
        await visitor.Page.GetByText("English", new() { Exact = true }).ClickAsync();
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Settings" }).WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Browser_InALanguageNotSpoken_ReadsEnglish()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, locale: "fr-FR");
        await visitor.OpenAsync("settings");
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Settings" }).WaitForAsync();
        Assert.Equal("en", await visitor.Page.EvaluateAsync<string>("document.documentElement.lang"));
        Assert.Empty(visitor.Faults);
    }

    // Every text that is read or heard on every page, against all English texts there are.
    [Theory]
    [InlineData(390)]
    [InlineData(1440)]
    public async Task EveryMainPage_InGerman_SaysNothingInEnglishAndFits(int width)
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, width, locale: "de-DE");
        var page = visitor.Page;
        await visitor.OpenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Demo ansehen" }).ClickAsync();
        await page.Locator("article.season h2 a").First.WaitForAsync();
        var apiary = (await page.Locator("article.season h2 a").First.GetAttributeAsync("href"))!;
        await visitor.GoAsync(apiary);
        var colony = (await page.Locator(".tiles a").First.GetAttributeAsync("href"))!;
        var control = (await page.Locator("a[href^='control/']").First.GetAttributeAsync("href"))!;
        var id = apiary.Split('/')[1];
        var english = EnglishTexts.Read();
        var faults = new SortedSet<string>(StringComparer.Ordinal);
        string[] ofColony = [.. new[] { "inspect", "queen", "split", "move", "unite", "died", "began", "brood-out", "brood", "fall", "edit" }.Select(part => $"{colony}/{part}")];
        foreach (var place in (string[])[.. Places, apiary, $"{apiary}/edit", $"{apiary}/days", $"{apiary}/weather", colony, .. ofColony, control, $"{control}/end", $"{control}/edit", $"choose/{id}", $"treat/{id}"])
        {
            await visitor.GoAsync(place);
            await page.Locator("h1").WaitForAsync();
            if (Environment.GetEnvironmentVariable("FOUNDRESS_SHOTS") is { Length: > 0 } folder)
                await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"de-{width}-{place.Split('/')[0]}-{(place.Contains('/') ? place.Split('/')[^1][..Math.Min(8, place.Split('/')[^1].Length)] : "")}.png"), FullPage = true });
            await page.EvaluateAsync("for (const details of document.querySelectorAll('details')) details.open = true;");
            var said = await page.EvaluateAsync<string[]>("""
                () => {
                  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
                  const texts = [];
                  while (walk.nextNode()) if (!['SCRIPT', 'STYLE'].includes(walk.currentNode.parentElement.tagName)) texts.push(walk.currentNode.data);
                  for (const element of document.querySelectorAll('[aria-label],[title],[alt],[placeholder]'))
                    for (const name of ['aria-label', 'title', 'alt', 'placeholder']) if (element.getAttribute(name)) texts.push(element.getAttribute(name));
                  return texts.map(text => text.trim()).filter(text => text.length > 1);
                }
                """);
            foreach (var words in said.Distinct().Where(english.Holds))
                faults.Add($"{words} (/{place.Split('/')[0]})");
            if (await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth") is > 0 and var over)
                faults.Add($"/{place} is {over} px too wide at {width} px");
        }

        foreach (var fault in faults)
            output.WriteLine(fault);
        Assert.True(faults.Count == 0, $"{faults.Count}:\n{string.Join('\n', faults)}");
        Assert.Empty(visitor.Faults);
    }
}
