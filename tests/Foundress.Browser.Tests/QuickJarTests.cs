using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed partial class QuickJarTests(PublishedApp app)
{
    // Values worked out with SciPy 1.10.1: chi2.ppf for Garwood's interval, gamma.sf for the chance.
    [Fact]
    public async Task Newcomer_MitesAndBeesTyped_ReadsTheWorkedAnswerAtOnce()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync("jar");
        await page.GetByText("Find the queen before taking bees").WaitForAsync();
        await page.GetByText("Alcohol burns").WaitForAsync();
        await page.GetByLabel("Mites", new() { Exact = true }).FillAsync("14");
        await page.GetByLabel("Bees", new() { Exact = true }).FillAsync("320");

        await page.Locator(".big", new() { HasText = "4.4" }).WaitForAsync();
        var answer = await page.Locator(".answer").InnerTextAsync();
        Assert.Contains("likely between 2.4 and 7.3 (95\u00a0% interval)", answer, StringComparison.Ordinal);
        Assert.Contains("over the line of 3 per 100: 92 in 100", answer, StringComparison.Ordinal);
        Assert.Contains("Above the line", answer, StringComparison.Ordinal);
        await page.Locator("#jar-picture").WaitForAsync();
        await page.GetByText("What would sharpen it").WaitForAsync();
        await page.GetByText("Show the working").ClickAsync();
        await page.GetByText("100 × 14 / 320 = 4.375 mites per 100 bees").WaitForAsync();
        Assert.Empty(host.Entries("home"));
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Bees_MeasureInsteadOfCounted_WidensTheIntervalAndAdvisesCounting()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync("jar");
        await TypeAsync(visitor.Page, "14", "300");
        var counted = await WidthAsync(visitor.Page);
        await visitor.Page.GetByText("A measure").ClickAsync();
        await visitor.Page.GetByText("Taken as about 300 bees").WaitForAsync();
        await visitor.Page.GetByText("Count the bees: the interval would be about").WaitForAsync();
        Assert.True(await WidthAsync(visitor.Page) > counted);

        // 25 g at 90.7 mg a bee are 276 bees; 14 in 276 are 5.07 per 100.
        await visitor.Page.GetByText("next best").ClickAsync();
        await visitor.Page.GetByLabel("Weight of the bees, grams", new() { Exact = true }).FillAsync("25");
        await visitor.Page.GetByText("Taken as about 276 bees").WaitForAsync();
        await visitor.Page.Locator(".big", new() { HasText = "5.1" }).WaitForAsync();
    }

    [Fact]
    public async Task NoMites_Typed_GivesTheUpperLimitAndNeverSaysFree()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync("jar");
        await TypeAsync(visitor.Page, "0", "300");

        // Garwood's upper limit for none in 300 at 95 %: -ln(0.025) / 3 = 1.23 per 100.
        await visitor.Page.Locator(".big", new() { HasText = "up to 1.2 per 100 bees may be there" }).WaitForAsync();
        await visitor.Page.GetByText("That is not proof of none").WaitForAsync();
        await visitor.Page.Locator("#jar-picture").WaitForAsync();
        var text = await visitor.Page.Locator("main").InnerTextAsync();
        Assert.DoesNotContain("mite free", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("mite-free", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keep_BadInput_NamesValueAndFixAndKeepsNothing()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync("jar");
        foreach (var (mites, bees, said) in new[]
        {
            ("-3", "320", "-3 is out of range. Type a number from 0 to 10000."),
            ("2,5", "320", "2,5 is not a whole number."),
            ("many", "320", "“many” is not a number."),
            ("14", "0", "0 is out of range. Type a number from 1 to 5000."),
            ("14", "", "The bees are missing."),
            ("", "320", "The mites are missing."),
        })
        {
            await TypeAsync(visitor.Page, mites, bees);
            await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
            await visitor.Page.Locator(".fault", new() { HasText = said }).WaitForAsync();
            await Assertions.Expect(visitor.Page.Locator(".answer")).ToHaveCountAsync(0);
            Assert.DoesNotContain("NaN", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        }

        Assert.Empty(host.Entries("home"));
    }

    [Fact]
    public async Task SecondPass_Typed_IsAddedAndShownInTheWorking()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync("jar");
        await TypeAsync(page, "12", "320");
        await page.GetByRole(AriaRole.Button, new() { Name = "Same bees once more" }).ClickAsync();
        await page.GetByText("Count by tapping").ClickAsync();
        for (var tap = 1; tap <= 2; tap++)
            await page.GetByRole(AriaRole.Button, new() { Name = $"{tap - 1} mites. Count one more" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Mites, pass 2", new() { Exact = true })).ToHaveValueAsync("2");
        await page.Locator(".big", new() { HasText = "4.4" }).WaitForAsync();
        await page.GetByText("Show the working").ClickAsync();
        await page.GetByText("12 + 2 = 14 over 2 passes").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take pass 2 away" }).ClickAsync();
        await page.Locator(".big", new() { HasText = "3.8" }).WaitForAsync();
    }

    [Fact]
    public async Task Keep_WithoutNetwork_IsThereAfterReloadAndCanBeTakenBack()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, keepsProgram: true);
        var page = visitor.Page;
        await visitor.OpenAsync("jar");
        await visitor.OfflineReadyAsync();
        await visitor.Context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await TypeAsync(page, "14", "320");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).TapAsync();
        await page.GetByText("Jar kept on this device").WaitForAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Loose jar" }).WaitForAsync();
        await Assertions.Expect(page).ToHaveURLAsync(OneJar());
        await page.ReloadAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Loose jar" }).WaitForAsync();
        await page.Locator(".big", new() { HasText = "4.4" }).WaitForAsync();
        await visitor.GoAsync("jar/loose");
        await page.GetByRole(AriaRole.Link, new() { Name = "Put to a colony" }).WaitForAsync();

        await visitor.GoAsync("jar");
        await TypeAsync(page, "5", "310");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "This jar is struck out" }).WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task LooseJar_PutToAColonyThenCorrected_CountsThereOnce()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Hazel bank", "1-2");
        await visitor.GoAsync("jar");
        await TypeAsync(page, "14", "320");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Put it to a colony" }).ClickAsync();
        await page.GetByLabel("Colony").SelectOptionAsync(new SelectOptionValue { Label = "Hazel bank · 2" });
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it there" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Jar of colony 2" }).WaitForAsync();
        var first = new Uri(page.Url).AbsolutePath[1..];

        await page.GetByRole(AriaRole.Link, new() { Name = "Correct" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Correct the jar" }).WaitForAsync();
        await Assertions.Expect(page.GetByLabel("Mites", new() { Exact = true })).ToHaveValueAsync("14");
        await page.GetByLabel("Mites", new() { Exact = true }).FillAsync("4");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the corrected jar" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Jar of colony 2" }).WaitForAsync();
        await page.Locator(".big", new() { HasText = "1.3" }).WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Colony 2" }).ClickAsync();
        await page.GetByText("Jar: 4 mites in 320 bees, counted").WaitForAsync();
        await visitor.GoAsync(first);
        await page.GetByRole(AriaRole.Heading, new() { Name = "This jar is struck out" }).WaitForAsync();
        await page.Locator("del", new() { HasText = "14 mites" }).WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Keep_MoreMitesThanBees_IsAskedOnce()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync("jar");
        await TypeAsync(visitor.Page, "5000", "300");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await visitor.Page.GetByText("if they are right, keep it once more").First.WaitForAsync();
        Assert.Equal(0, await visitor.Page.EvaluateAsync<int>("import('/js/store.js').then(store => store.countPending('home'))"));
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "1667" }).Or(visitor.Page.GetByText("1667")).First.WaitForAsync();
    }

    [Fact]
    public async Task Keep_ColonyFromTheAddressOrNewlyNamed_BelongsToIt()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Hazel bank", "1-2");
        await page.GetByRole(AriaRole.Link, new() { Name = "2 no jar yet" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Colony 2", Exact = true }).WaitForAsync();
        await visitor.GoAsync("jar?colony=" + new Uri(page.Url).Segments[^1]);
        await TypeAsync(page, "6", "300");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Jar of colony 2" }).WaitForAsync();

        await visitor.GoAsync("jar");
        await TypeAsync(page, "6", "300");
        await page.GetByLabel("Apiary", new() { Exact = true }).SelectOptionAsync("Hazel bank");
        await page.GetByLabel("Colony", new() { Exact = true }).SelectOptionAsync("new");
        await page.GetByLabel("Number or name of the new colony").FillAsync("Q7");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Jar of colony Q7" }).WaitForAsync();
    }

    [Fact]
    public async Task OwnLine_Kept_JudgesTheNextJar()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync("settings/judging");
        await page.GetByLabel("Judge jars by").SelectOptionAsync("mayen-wash");
        await page.GetByText("scales are not converted").WaitForAsync();
        await page.GetByLabel("Judge jars by").SelectOptionAsync("own");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the settings" }).ClickAsync();
        await page.GetByText("no line is given").WaitForAsync();
        await page.GetByLabel("A control is needed above", new() { Exact = true }).FillAsync("10");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the settings" }).ClickAsync();
        await page.GetByText("your own: 10 per 100").WaitForAsync();
        await visitor.GoAsync("jar");
        await TypeAsync(page, "14", "320");
        await page.Locator(".answer", new() { HasText = "Below the line" }).WaitForAsync();
    }

    [Fact]
    public async Task Keyboard_Alone_CountsAndKeepsAJar()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, 1440, 900);
        var page = visitor.Page;
        await visitor.OpenAsync("jar");
        await TabToAsync(page, "Mites");
        await page.Keyboard.TypeAsync("14");
        await TabToAsync(page, "Bees");
        await page.Keyboard.TypeAsync("320");
        await page.Locator(".big", new() { HasText = "4.4" }).WaitForAsync();
        await TabToAsync(page, "Keep in the book");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Loose jar" }).WaitForAsync();
    }

    [Fact]
    public async Task JarPages_EveryThemeAndScreen_PassAxeAndTargetSizes()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        var check = new PageCheck();
        await visitor.OpenAsync("jar");
        await page.GetByLabel("Mites", new() { Exact = true }).WaitForAsync();
        await page.RunAxe();
        await check.LookAsync(page, "jar-empty");
        await TypeAsync(page, "9", "80");
        await page.GetByText("the interval will be very wide").WaitForAsync();
        await page.GetByText("What would sharpen it").WaitForAsync();
        await check.LookAsync(page, "jar-doubt");
        await TypeAsync(page, "14", "320");
        await page.GetByText("Show the working").ClickAsync();
        await page.GetByText("the interval will be very wide").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await check.LookAsync(page, "jar-answer");
        await page.GetByText("A measure").ClickAsync();
        await page.GetByLabel("Measure", new() { Exact = true }).WaitForAsync();
        await check.LookAsync(page, "jar-measure");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the book" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Loose jar" }).WaitForAsync();
        await page.GetByText("What would sharpen it").WaitForAsync();
        await check.LookAsync(page, "jar-page");
        await visitor.GoAsync("jar/loose");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Loose jars" }).WaitForAsync();
        await check.LookAsync(page, "jar-loose");
        await visitor.GoAsync("settings/judging");
        await page.GetByLabel("Judge jars by").SelectOptionAsync("ontario-jar");
        await page.GetByText("from memory").First.WaitForAsync();
        await check.LookAsync(page, "judging");
        Assert.True(check.Faults.Count == 0, string.Join("\n", check.Faults));
        Assert.Empty(visitor.Faults);
    }

    [GeneratedRegex("/jar/[0-9a-f-]{36}$")]
    private static partial Regex OneJar();

    private static async Task TypeAsync(IPage page, string mites, string bees)
    {
        await page.GetByLabel("Mites", new() { Exact = true }).FillAsync(mites);
        await page.GetByLabel("Bees", new() { Exact = true }).FillAsync(bees);
    }

    // Width of the interval that the sentence gives, in mites per 100 bees.
    private static async Task<double> WidthAsync(IPage page)
    {
        var ends = Ends().Match(await page.Locator(".answer").InnerTextAsync());
        return double.Parse(ends.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture)
            - double.Parse(ends.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    [GeneratedRegex("between ([0-9.]+) and ([0-9.]+)")]
    private static partial Regex Ends();

    private static async Task TabToAsync(IPage page, string name)
    {
        for (var press = 0; press < 60; press++)
        {
            await page.Keyboard.PressAsync("Tab");
            var at = await page.EvaluateAsync<string>("(e => (e.labels?.[0]?.innerText ?? e.ariaLabel ?? e.innerText ?? '').trim())(document.activeElement)");
            if (at == name)
                return;
        }

        Assert.Fail($"'{name}' was not reached within 60 presses of Tab.");
    }
}
