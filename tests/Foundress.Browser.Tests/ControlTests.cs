using Deque.AxeCore.Playwright;
using Foundress.Book.Records;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Foundress.Browser.Tests;

/// <summary>From a control to its proof and the register, on the screens.</summary>
public sealed class ControlTests(PublishedApp app)
{
    private static DateOnly Today => ControlYard.Today;

    [Fact]
    public async Task Cycle_TreatEndProveRegister_EachStepLeadsToTheNext()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        var yard = new ControlYard();
        await yard.EnterAsync(visitor);
        await visitor.GoAsync($"treat/{yard.Apiary}?agent=formic-acid-long&start={ControlYard.Iso(Today.AddDays(-18))}");
        await Assertions.Expect(page.GetByLabel("Over, or to be taken out, on")).ToHaveValueAsync(ControlYard.Iso(Today.AddDays(-4)));
        await page.GetByText("Ready: a fitted respirator").WaitForAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Checkbox, new() { Name = "13.3 per 100" })).ToHaveCountAsync(4);
        // What was counted later than the first day was no reason for it.
        await page.GetByLabel("First day").FillAsync(ControlYard.Iso(Today.AddDays(-21)));
        await Assertions.Expect(page.GetByRole(AriaRole.Checkbox, new() { Name = "13.3 per 100" })).ToHaveCountAsync(0);
        await page.GetByLabel("First day").FillAsync(ControlYard.Iso(Today.AddDays(-18)));
        await Assertions.Expect(page.GetByRole(AriaRole.Checkbox, new() { Name = "13.3 per 100" })).ToHaveCountAsync(4);
        await page.GetByLabel("Quantity for each colony").FillAsync("1");
        await page.GetByLabel("Unit").SelectOptionAsync("pads");
        await page.GetByLabel("Batch").FillAsync("B-77");
        await page.GetByLabel("Withdrawal period", new() { Exact = true }).FillAsync("0");
        await page.GetByLabel("Supplier").FillAsync("Shop, Street 1");
        await KeepAnywayAsync(page);
        await page.GetByRole(AriaRole.Heading, new() { Name = "Formic acid, long" }).WaitForAsync();
        await page.GetByText("Take out Formic acid, long (4 colonies).").WaitForAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "It is over, or was stopped" }).ClickAsync();
        await page.GetByLabel("Day", new() { Exact = true }).FillAsync(ControlYard.Iso(Today.AddDays(-30)));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep how it ended" }).ClickAsync();
        await page.GetByText("is before the start").First.WaitForAsync();
        await page.GetByLabel("Day", new() { Exact = true }).FillAsync(ControlYard.Iso(Today.AddDays(-4)));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep how it ended" }).ClickAsync();
        await page.GetByText("Jars after it are due").First.WaitForAsync();
        var control = new Uri(page.Url).AbsolutePath[1..];
        await visitor.GoAsync("due");
        await page.GetByText("Jars after Formic acid, long: did it work?").WaitForAsync();

        for (var i = 0; i < 4; i++)
            yard.Jar(i, Today.AddDays(-2), 1);
        await yard.EnterAsync(visitor);
        await visitor.GoAsync(control);
        await page.Locator(".verdict", new() { HasText = "Worked" }).WaitForAsync();
        await page.GetByText("It worked (").WaitForAsync();
        await visitor.GoAsync($"apiary/{yard.Apiary}");
        await page.GetByRole(AriaRole.Link, new() { Name = "Formic acid, long" }).WaitForAsync();
        Assert.True(await page.Locator(".fd-control .fd-bar").CountAsync() >= 1);

        await visitor.GoAsync("register");
        var table = page.Locator(".registertable");
        await table.GetByText("1 pads").WaitForAsync();
        foreach (var text in new[] { "B-77", "Shop, Street 1", "Linden yard", "4 colonies: L1, L2, L3, L4", "It worked (" })
            await Assertions.Expect(table).ToContainTextAsync(text);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Careless_EveryHazard_IsWarnedOfBeforeAndKeptOnlyOnTheWord()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        var yard = new ControlYard(supersOn: true);
        await yard.EnterAsync(visitor);
        await visitor.GoAsync($"treat/{yard.Apiary}");
        // Nothing filled in: everything missing is named and nothing is kept.
        await page.GetByRole(AriaRole.Button, new() { Name = "None" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the control" }).ClickAsync();
        await page.GetByText("No control is chosen.").WaitForAsync();
        await page.GetByText("No colony is chosen.").WaitForAsync();

        // Supers on, and a label that does not allow it.
        await page.GetByRole(AriaRole.Button, new() { Name = "All 4" }).ClickAsync();
        await page.GetByLabel("Control", new() { Exact = true }).SelectOptionAsync("amitraz-strips");
        await page.GetByText("Supers are on").First.WaitForAsync();
        // End before start.
        await page.GetByLabel("Over, or to be taken out, on").FillAsync(ControlYard.Iso(Today.AddDays(-9)));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the control" }).ClickAsync();
        await page.GetByText("is before the start").First.WaitForAsync();
        // Too cold for what is chosen.
        await page.GetByLabel("Control", new() { Exact = true }).SelectOptionAsync("formic-acid-long");
        await page.GetByLabel("Highest air of the day", new() { Exact = true }).FillAsync("3");
        await page.GetByText("3 °C is colder than").First.WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the control" }).ClickAsync();
        await page.GetByText("Read what speaks against it.").WaitForAsync();
        await Assertions.Expect(page.GetByText("Take out")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "It was done as written here" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the control" }).ClickAsync();
        await page.GetByText("Take out Formic acid, long (4 colonies).").WaitForAsync();

        // The same again on top of it: two of one group at once.
        await visitor.GoAsync($"treat/{yard.Apiary}?agent=formic-acid-short");
        await page.GetByText("of the same kind").First.WaitForAsync();
        // Something that is in no list.
        await page.GetByLabel("Control", new() { Exact = true }).SelectOptionAsync("?");
        await page.GetByLabel("What was used").FillAsync("Garlic");
        await page.GetByText("'Garlic' is not among the known controls").WaitForAsync();
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "It was done as written here" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the control" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Garlic" }).WaitForAsync();

        // Struck out: still in the register, crossed out, with the reason.
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike out: Garlic" }).ClickAsync();
        await page.GetByLabel("Why is it struck out?").FillAsync("Only thought of it");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike it out" }).ClickAsync();
        await page.GetByText("It was struck out.").WaitForAsync();
        await visitor.GoAsync("register");
        await page.Locator("tr.gone del", new() { HasText = "Garlic" }).First.WaitForAsync();
        await page.GetByText("Only thought of it").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Register_Printed_FillsA4AndLetterAndCutsNoRecord()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        var yard = new ControlYard(jars: false);
        const int records = 40;
        var words = string.Join(' ', Enumerable.Repeat("said at length", 12));
        for (var i = 1; i <= records; i++)
            yard.Write(new ControlRecord(yard.NewControl(), "oxalic-acid-trickle", Today.AddDays(-i), yard.Colonies, Today.AddDays(-i), Reason: $"top{i}x {words}", Note: $"{words} end{i}x"));
        await yard.EnterAsync(visitor);
        await visitor.GoAsync("register");
        await page.Locator(".registertable tbody tr").Nth(records - 1).WaitForAsync();
        foreach (var (format, width, height) in new[] { ("A4", 842, 595), ("Letter", 792, 612) })
        {
            using var pdf = PdfDocument.Open(await page.PdfAsync(new() { Format = format }));
            Assert.InRange(pdf.NumberOfPages, 4, 14);
            var texts = pdf.GetPages().Select(one => one.Text.Replace(" ", "", StringComparison.Ordinal)).ToArray();
            Assert.All(pdf.GetPages(), one => Assert.True(Math.Abs(one.Width - width) < 2 && Math.Abs(one.Height - height) < 2, $"{format}: {one.Width} × {one.Height}"));
            // The heads stand on every page with records, and the app's own places and buttons on none.
            Assert.All(texts.Where(text => text.Contains("top", StringComparison.Ordinal)), text => Assert.Contains("Where,andwhichcolonies", text, StringComparison.Ordinal));
            Assert.All(texts, text => Assert.DoesNotContain("Pageasafile", text, StringComparison.Ordinal));
            for (var i = 1; i <= records; i++)
            {
                var top = Array.FindIndex(texts, text => text.Contains($"top{i}x", StringComparison.Ordinal));
                Assert.True(top >= 0, $"Record {i} is missing on {format}.");
                Assert.Equal(top, Array.FindIndex(texts, text => text.Contains($"end{i}x", StringComparison.Ordinal)));
            }
        }

        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Phone_WithoutNetwork_RecordsPutsOffAndTellsWhatLabelsNeed()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, keepsProgram: true);
        var page = visitor.Page;
        await page.SetViewportSizeAsync(390, 844);
        await visitor.OpenAsync();
        var yard = new ControlYard();
        await yard.EnterAsync(visitor);
        await visitor.OfflineReadyAsync();
        await visitor.Context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await page.Locator("h1").WaitForAsync();
        await visitor.GoAsync($"treat/{yard.Apiary}?agent=thymol&colonies={yard.Colonies[1]}");
        Assert.Equal(1, await page.Locator(".ticks input:checked").First.EvaluateAsync<int>("input => input.closest('.ticks').querySelectorAll('input:checked').length"));
        await KeepAnywayAsync(page);
        await page.GetByText("Take out Thymol (1 colony).").WaitForAsync();
        await visitor.GoAsync("due");
        var due = page.Locator(".dues > li", new() { HasText = "Take out Thymol" });
        await due.GetByRole(AriaRole.Button, new() { Name = "Put off" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it off" }).ClickAsync();
        await page.GetByText("No reason is given.").WaitForAsync();
        await page.GetByLabel("Why is it put off?").FillAsync("Rain all week");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it off" }).ClickAsync();
        await page.GetByText("Put off: Rain all week").WaitForAsync();
        await page.ReloadAsync();
        await page.GetByText("Put off: Rain all week").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Bring back" }).ClickAsync();
        await page.GetByText("Put off: Rain all week").WaitForAsync(new() { State = WaitForSelectorState.Detached });

        await visitor.GoAsync("labels");
        await page.GetByText("Load this page again when the network is there").WaitForAsync();
        await visitor.Context.SetOfflineAsync(false);
        await page.GetByRole(AriaRole.Button, new() { Name = "Load the page again" }).ClickAsync();
        await page.Locator(".labels .qr").Nth(3).WaitForAsync();
        await page.GetByLabel("Address of the app").FillAsync("here");
        await page.GetByText("This is no address.").WaitForAsync();
    }

    [Fact]
    public async Task Settings_LabelFiguresGearAndDays_DecideWhatIsSaid()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        var yard = new ControlYard();
        await yard.EnterAsync(visitor);
        await visitor.GoAsync("settings/controls");
        await page.GetByText("Impermeable gloves").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the settings" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Settings", Exact = true }).WaitForAsync();
        await visitor.GoAsync("settings/controls/thymol");
        await page.GetByLabel("Withdrawal period", new() { Exact = true }).FillAsync("3");
        await page.GetByLabel("Days from start to end", new() { Exact = true }).FillAsync("30");
        await page.GetByLabel("Which label or law").FillAsync("Pack of this spring");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the figures" }).ClickAsync();
        await page.GetByText("Thymol (your figures)").WaitForAsync();
        await visitor.GoAsync($"apiary/{yard.Apiary}/days");
        await page.GetByLabel("Supers go on").FillAsync(ControlYard.Iso(Today.AddDays(10)));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the days" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Linden yard", Exact = true }).WaitForAsync();

        await visitor.GoAsync($"treat/{yard.Apiary}?agent=thymol");
        await Assertions.Expect(page.GetByLabel("Over, or to be taken out, on")).ToHaveValueAsync(ControlYard.Iso(Today.AddDays(30)));
        await Assertions.Expect(page.GetByLabel("Withdrawal period", new() { Exact = true })).ToHaveValueAsync("3");
        await page.GetByText("Supers are due on").First.WaitForAsync();
        await visitor.GoAsync($"treat/{yard.Apiary}?agent=oxalic-acid-vapour");
        await page.GetByText("not among the gear you have").First.WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task EveryPage_EveryThemeAndScreen_PassesAxeTargetsAndWidth()
    {
        var check = new PageCheck();
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await page.RunAxe();
        var yard = new ControlYard(supersOn: true);
        var use = new ControlRecord(yard.NewControl(), "formic-acid-long", Today.AddDays(-19), yard.Colonies, Today.AddDays(-5), "Pads", "1 pad", "B-1", "Shop, Street 1");
        var open = new ControlRecord(yard.NewControl(), "thymol", Today.AddDays(-1), [yard.Colonies[0]], Today.AddDays(20));
        yard.Write(use, new ControlEnded(use.Control, Today.AddDays(-5)), open);
        for (var i = 0; i < 4; i++)
            yard.Jar(i, Today.AddDays(-3), 12);
        await yard.EnterAsync(visitor);
        foreach (var (name, address, ready) in new[]
        {
            ("treat", $"treat/{yard.Apiary}?agent=formic-acid-short", ".checks"),
            ("control", $"control/{use.Control}", ".verdict"),
            ("end", $"control/{open.Control}/end", "form"),
            ("due", "due", ".dues"),
            ("register", "register", ".registertable"),
            ("labels", "labels", ".labels"),
            ("controls", "settings/controls", "form"),
            ("own-agent", "settings/controls/thymol", "form"),
            ("days", $"apiary/{yard.Apiary}/days", "form"),
            ("weather", $"apiary/{yard.Apiary}/weather", "form"),
        })
        {
            await visitor.GoAsync(address);
            await page.Locator(ready).First.WaitForAsync();
            if (await page.Locator(".undobar button").CountAsync() > 0)
                await page.Locator(".undobar button").Last.ClickAsync();
            await check.LookAsync(page, name);
        }

        Assert.True(check.Faults.Count == 0, string.Join("\n", check.Faults));
        Assert.Empty(visitor.Faults);
    }

    private static async Task KeepAnywayAsync(IPage page)
    {
        var sure = page.GetByRole(AriaRole.Checkbox, new() { Name = "It was done as written here" });
        if (await sure.CountAsync() > 0)
            await sure.CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the control" }).ClickAsync();
    }
}
