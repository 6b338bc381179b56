using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>A phone that takes only part of a book.</summary>
public sealed class PartTests(PublishedApp app)
{
    [Fact]
    public async Task Phone_OneApiaryChosen_HoldsThatRecordsOfflineAndGoesBackToTheWholeBook()
    {
        await using var server = await app.ServeAsync();
        await using var laptop = await app.VisitAsync(server.Address.ToString(), 1440, 900);
        await laptop.OpenAsync();
        await laptop.RegisterAsync("Near row", "N1-N3");
        await laptop.RegisterAsync("Far field", "F1-F2");
        await laptop.Page.GetByText("Kept on this device and copied").WaitForAsync();

        await using var phone = await app.VisitAsync(server.Address.ToString(), keepsProgram: true);
        await phone.OpenAsync();
        await Link(phone, "Far field").WaitForAsync();
        await phone.GoAsync("settings");
        await phone.Page.GetByText("The whole book.").WaitForAsync();
        await Button(phone, "Choose apiaries").ClickAsync();
        await phone.Page.GetByLabel("Far field").WaitForAsync();
        await Button(phone, "Take these").ClickAsync();
        await phone.Page.GetByText("No apiary is ticked.").WaitForAsync();
        await phone.Page.GetByLabel("Near row").CheckAsync();
        Assert.Contains("3 colonies", await phone.Page.Locator("label.toggle", new() { HasText = "Near row" }).InnerTextAsync(), StringComparison.Ordinal);
        await Button(phone, "Take these").ClickAsync();
        await phone.Page.GetByText("Only part of the book: Near row").WaitForAsync();

        // What is not chosen is on no list, and every list says so.
        foreach (var page in new[] { "due", "register", "breeding", "" })
        {
            await phone.GoAsync(page);
            await phone.Page.GetByText("This device takes only part of the book: Near row.").WaitForAsync();
        }

        await Link(phone, "Near row").WaitForAsync();
        await Assertions.Expect(Link(phone, "Far field")).ToHaveCountAsync(0);
        await phone.Page.GetByText("1 apiary, 3 living colonies").WaitForAsync();

        // Its entries leave the device when room is made, and those of the chosen apiary are there again.
        await phone.GoAsync("settings");
        await phone.Page.GetByText("Make room on this device").ClickAsync();
        await Button(phone, "Remove the rest").ClickAsync();
        await phone.Page.GetByText("The rest was removed").WaitForAsync();
        await phone.UntilKeptAsync("store.readAfter('home', 0).then(rows => rows.includes('N3') && !rows.includes('F2'))");

        await phone.Context.SetOfflineAsync(true);
        await phone.RegisterAsync("Fresh place", "P1");
        await phone.Page.GetByText("not copied yet: 2").WaitForAsync();
        await phone.GoAsync("");
        await Link(phone, "Fresh place").WaitForAsync();
        await phone.Page.GetByText("2 apiaries, 4 living colonies").WaitForAsync();
        await phone.Context.SetOfflineAsync(false);
        await phone.GoAsync("settings");
        await Button(phone, "Copy now").ClickAsync();
        await phone.Page.GetByText("Kept on this device and copied").WaitForAsync();

        await Button(phone, "Take the whole book").ClickAsync();
        await phone.Page.GetByText("The whole book.").WaitForAsync();
        await phone.GoAsync("");
        await Link(phone, "Far field").ClickAsync();
        await Link(phone, "F2").WaitForAsync();
        await Assertions.Expect(phone.Page.GetByText("takes only part")).ToHaveCountAsync(0);

        await laptop.OpenAsync();
        await Link(laptop, "Fresh place").WaitForAsync();
        Assert.Empty(phone.Faults);
        Assert.Empty(laptop.Faults);
    }

    [Fact]
    public async Task Phone_MeetsALargeBook_AsksBeforeItTakesIt()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        host.Told = 1_000_000;
        host.Put("home", new JsonObject
        {
            ["id"] = Guid.CreateVersion7().ToString(),
            ["operation"] = "home",
            ["author"] = "someone",
            ["device"] = "elsewhere",
            ["clock"] = "0199a3c1f2b4-0000",
            ["kind"] = "apiary",
            ["schema"] = 1,
            ["payload"] = new JsonObject { ["apiary"] = Guid.CreateVersion7().ToString(), ["name"] = "One of many" },
        });
        await using var phone = await app.VisitAsync(host);
        await phone.OpenAsync();
        await phone.Page.GetByText("The book on the server has 1,000,000 entries, about 434 MB").WaitForAsync();
        await phone.UntilKeptAsync("store.readAfter('home', 0).then(rows => rows.includes('\"entries\":[]'))");
        await Button(phone, "Take the whole book").ClickAsync();
        await Link(phone, "One of many").WaitForAsync();
        await Assertions.Expect(phone.Page.GetByText("The book on the server has")).ToHaveCountAsync(0);
        await phone.Page.ReloadAsync();
        await Link(phone, "One of many").WaitForAsync();
        await Assertions.Expect(phone.Page.GetByText("The book on the server has")).ToHaveCountAsync(0);
        Assert.Empty(phone.Faults);
    }

    private static ILocator Link(Visitor visitor, string name) => visitor.Page.GetByRole(AriaRole.Link, new() { Name = name });

    private static ILocator Button(Visitor visitor, string name) => visitor.Page.GetByRole(AriaRole.Button, new() { Name = name });
}
