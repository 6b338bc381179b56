using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class ExchangeTests(PublishedApp app)
{
    [Fact]
    public async Task Record_WrittenOnOnePhone_IsOnTheOther()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var one = await app.VisitAsync(host);
        await one.OpenAsync();
        await one.RegisterAsync("Lime row", "A01-A03");
        await one.Page.GetByText("Kept on this device and copied").WaitForAsync();
        Assert.Equal(4, host.Entries("home").Count);

        await using var other = await app.VisitAsync(host, 1440, 900);
        await other.OpenAsync();
        await other.Page.GetByRole(AriaRole.Link, new() { Name = "Lime row" }).ClickAsync();
        await other.Page.GetByRole(AriaRole.Link, new() { Name = "A02" }).WaitForAsync();
        Assert.Empty(one.Faults);
        Assert.Empty(other.Faults);
    }

    [Fact]
    public async Task Record_ServerDown_IsKeptAndCopiedLater()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        host.Down = true;
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Far field", "1");
        await visitor.Page.GetByText("Kept on this device; not copied yet: 2").WaitForAsync();
        await visitor.Page.GetByText("The server answered 503").WaitForAsync();

        host.Down = false;
        await visitor.GoAsync("settings");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Copy now" }).ClickAsync();
        await visitor.Page.GetByText("Kept on this device and copied").WaitForAsync();
        Assert.Equal(2, host.Entries("home").Count);
    }

    [Fact]
    public async Task Records_ServerBeganAnew_AreGivenAgain()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Old oak", "1-3");
        await visitor.Page.GetByText("Kept on this device and copied").WaitForAsync();
        Assert.Equal(4, host.Entries("home").Count);
        host.BeginAnew();
        await visitor.Page.ReloadAsync();
        await visitor.UntilKeptAsync($"store.metaGet('incarnation').then(kept => kept === '{host.Incarnation}')");
        await visitor.UntilKeptAsync("store.readPending('home', 1).then(rows => rows === '[]')");
        Assert.Equal(4, host.Entries("home").Count);
    }

    [Fact]
    public async Task Record_ServerRefusesIt_StaysOnTheDeviceAndIsCounted()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        host.RefusedKind = "colony";
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Odd place", "1-2");
        await visitor.Page.GetByText("Kept on this device and copied").WaitForAsync();
        await visitor.GoAsync("settings");
        await visitor.Page.GetByText("2 (they stay on this device)").WaitForAsync();
        Assert.Single(host.Entries("home"));
        await visitor.GoAsync("");
        await visitor.Page.GetByText("2 living colonies").WaitForAsync();
    }

    [Fact]
    public async Task Demo_OfferedToANewcomer_IsMarkedAndRemovedInOneTap()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        host.OffersDemo = true;
        host.Put("demo", ApiaryEntry("demo", "Invented orchard"));
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.Page.GetByText("Invented data.").WaitForAsync();
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Invented orchard" }).WaitForAsync();
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Remove the demo" }).ClickAsync();
        await visitor.Page.GetByText("Where to begin").WaitForAsync();
        // The device forgets the demo first and tells the server next.
        await Patiently.UntilAsync(() => Task.FromResult(host.Entries("demo").Count == 0));
        Assert.Empty(host.Entries("demo"));
        await visitor.Page.ReloadAsync();
        await visitor.Page.GetByText("Where to begin").WaitForAsync();
        await Assertions.Expect(visitor.Page.GetByText("Invented data.")).ToHaveCountAsync(0);
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Demo_KeeperHasOwnRecords_IsNotOpened()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        host.Put("home", ApiaryEntry("home", "Own place"));
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Own place" }).WaitForAsync();
        host.OffersDemo = true;
        await visitor.UntilExchangedAsync(() => visitor.Page.ReloadAsync());
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Own place" }).WaitForAsync();
        await Assertions.Expect(visitor.Page.GetByText("Invented data.")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task TwoTabs_RecordWrittenInOne_ShowsInTheOther()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        var tab = await visitor.NewPageAsync();
        await tab.GotoAsync("/");
        await tab.GetByText("Where to begin").WaitForAsync();
        await visitor.RegisterAsync("Shared hill", "1-2");
        await tab.GetByRole(AriaRole.Link, new() { Name = "Shared hill" }).WaitForAsync();
        await tab.GetByText("2 living colonies").WaitForAsync();
    }

    private static JsonObject ApiaryEntry(string operation, string name) => new()
    {
        ["id"] = Guid.CreateVersion7().ToString(),
        ["operation"] = operation,
        ["author"] = "someone",
        ["device"] = "elsewhere",
        ["clock"] = "0199a3c1f2b4-0000",
        ["kind"] = "apiary",
        ["schema"] = 1,
        ["payload"] = new JsonObject { ["apiary"] = Guid.CreateVersion7().ToString(), ["name"] = name },
    };
}
