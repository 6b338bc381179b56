using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class OfflineTests(PublishedApp app)
{
    [Fact]
    public async Task Reload_WithoutNetwork_ShowsTheAppAndWhatWasKept()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, keepsProgram: true);
        await visitor.OpenAsync();
        await visitor.OfflineReadyAsync();
        await visitor.Context.SetOfflineAsync(true);
        await visitor.Page.ReloadAsync();

        await visitor.RegisterAsync("Hazel bank", "1-3");
        await visitor.Page.ReloadAsync();
        await visitor.Page.GetByText("3 colonies", new() { Exact = true }).WaitForAsync();
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "2 no jar yet" }).WaitForAsync();
        await visitor.Page.GetByText("not copied yet: 4").WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task NewTab_ServerGone_ShowsTheApp()
    {
        var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host, keepsProgram: true);
        await visitor.OpenAsync();
        await visitor.OfflineReadyAsync();
        await host.DisposeAsync();
        var tab = await visitor.NewPageAsync();
        await tab.GotoAsync("/apiary/new");
        await tab.GetByRole(AriaRole.Heading, new() { Name = "Register an apiary" }).WaitForAsync();
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task Draft_PageReloadedMidForm_IsBack()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync("apiary/new");
        await visitor.Page.GetByLabel("Name", new() { Exact = true }).FillAsync("Half typed");
        await visitor.UntilKeptAsync("store.draftGet('home/apiary:').then(draft => !!draft && draft.includes('Half typed'))");
        await visitor.Page.ReloadAsync();
        await visitor.Page.GetByText("What you typed earlier and did not keep is back.").WaitForAsync();
        await Assertions.Expect(visitor.Page.GetByLabel("Name", new() { Exact = true })).ToHaveValueAsync("Half typed");
    }
}
