using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class BookKeepingTests(PublishedApp app)
{
    [Fact]
    public async Task Inspection_KeptStruckAndBroughtBack_HistoryTellsAll()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Brook side", "1-2");
        await page.GetByRole(AriaRole.Link, new() { Name = "1 no jar yet" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Inspect" }).ClickAsync();
        await page.GetByLabel("Frames of bees", new() { Exact = true }).FillAsync("7,5");
        await page.GetByRole(AriaRole.Button, new() { Name = "More: Frames of brood" }).ClickAsync();
        await page.GetByRole(AriaRole.Group, new() { Name = "Queen seen" }).GetByText("Yes").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the inspection" }).ClickAsync();
        await page.GetByText("Inspection: 7.5 frames of bees, 0.5 of brood, queen seen").WaitForAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Strike out: Inspection" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike it out" }).ClickAsync();
        await page.GetByText("No reason is given.").WaitForAsync();
        await page.GetByLabel("Why is it struck out?").FillAsync("Wrong hive");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike it out" }).ClickAsync();
        await page.Locator("del", new() { HasText = "Inspection" }).WaitForAsync();
        await page.GetByText("Wrong hive").WaitForAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Bring back" }).ClickAsync();
        await page.Locator("del").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await page.ReloadAsync();
        await page.GetByText("Inspection: 7.5 frames of bees").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Form_BadInput_NamesValueAndFixAndKeepsNothing()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        var page = visitor.Page;
        await visitor.OpenAsync("apiary/new");
        await page.GetByText("Where it lies").ClickAsync();
        await page.GetByLabel("Latitude, degrees", new() { Exact = true }).FillAsync("123");
        await page.GetByLabel("Longitude, degrees", new() { Exact = true }).FillAsync("east");
        await page.GetByRole(AriaRole.Button, new() { Name = "Register the apiary" }).ClickAsync();
        await page.GetByText("3 fields need a look. Nothing was kept yet.").WaitForAsync();
        await page.GetByText("The apiary needs a name.").WaitForAsync();
        await page.GetByText("123 is out of range. Type a number from -90 to 90.").WaitForAsync();
        await page.GetByText("“east” is not a number.").WaitForAsync();
        Assert.Equal("Name", await page.EvaluateAsync<string>("document.activeElement.labels[0].innerText"));
        Assert.Empty(host.Entries("home"));
    }

    [Fact]
    public async Task Colonies_BadRange_NamesTheFix()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Gate", "99");
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Register colonies" }).ClickAsync();
        foreach (var (names, said) in new[] { ("12-1", "runs backwards"), ("1-900", "at most 500"), ("3, 4, 3", "named twice"), (" , ", "No name was given") })
        {
            await visitor.Page.GetByLabel("Numbers or names").FillAsync(names);
            await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Register", Exact = true }).ClickAsync();
            await visitor.Page.Locator(".fault", new() { HasText = said }).WaitForAsync();
        }
    }

    [Fact]
    public async Task Undo_RightAfterKeeping_TakesItBack()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Gate", "1-5");
        await visitor.Page.GetByText("5 colonies registered in Gate").WaitForAsync();
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "0 colonies" }).WaitForAsync();
    }

    [Fact]
    public async Task Export_TakenInByAnotherDevice_GivesTheSameBook()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var elsewhere = await PublishedHost.StartAsync(app.WebRoot);
        await using var one = await app.VisitAsync(host);
        await one.OpenAsync();
        await one.RegisterAsync("Old wall", "1-4");
        await one.GoAsync("settings");
        var download = await one.Page.RunAndWaitForDownloadAsync(() => one.Page.GetByRole(AriaRole.Button, new() { Name = "Export all entries" }).ClickAsync());
        var file = Path.GetTempFileName();
        await download.SaveAsAsync(file);

        await using var other = await app.VisitAsync(elsewhere);
        await other.OpenAsync("settings");
        await other.Page.Locator("input[type=file]").SetInputFilesAsync(file);
        await other.Page.GetByText("5 records read").WaitForAsync();
        await other.Page.GetByText("5 of them new").WaitForAsync();
        await other.GoAsync("");
        await other.Page.GetByText("4 living colonies").WaitForAsync();

        await File.WriteAllTextAsync(file, "apiary;colony\nnot;json");
        await other.GoAsync("settings");
        await other.Page.Locator("input[type=file]").SetInputFilesAsync(file);
        await other.Page.GetByText("is not a file of Foundress entries, so nothing was taken in.").WaitForAsync();
        File.Delete(file);
        Assert.Empty(other.Faults);
    }
}
