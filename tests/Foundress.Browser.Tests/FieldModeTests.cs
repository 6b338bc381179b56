using System.Diagnostics;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>A phone in a bee yard: touch, no network, a slow processor, a dead battery in the middle of a jar.</summary>
public sealed class FieldModeTests(PublishedApp app)
{
    [Fact]
    public async Task Jar_PhoneDiesInTheMiddle_GoesOnFromAColdStartWithoutNetwork()
    {
        var folder = Directory.CreateTempSubdirectory("foundress-phone").FullName;
        try
        {
            var host = await PublishedHost.StartAsync(app.WebRoot);
            await using (var phone = await app.PhoneAsync(folder, host.Address))
            {
                await SlowAsync(phone, 4);
                await phone.OpenAsync();
                await phone.OfflineReadyAsync();
                await phone.RegisterAsync("Heath", "1-3");
                await phone.GoAsync("rounds/new");
                await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Draw the colonies" }).ClickAsync();
                await Press(phone.Page, "Keep this round");
                await phone.Context.SetOfflineAsync(true);
                await Press(phone.Page, "Found it");
                await Press(phone.Page, "She is safe");
                await Press(phone.Page, "The bees are in the jar");
                await Press(phone.Page, "Shaken");
                for (var n = 0; n < 3; n++)
                    await phone.Page.Locator(".pad").TapAsync();
                await phone.UntilKeptAsync("store.draftGet('home/round:' + location.pathname.split('/')[2]).then(draft => !!draft && draft.includes('\"mites\":\"3\"'))");
                Kill(folder);
            }

            // The server is gone too: nothing but the phone itself can bring the page back.
            var address = host.Address;
            await host.DisposeAsync();
            await using (var phone = await app.PhoneAsync(folder, address))
            {
                await phone.OpenAsync();
                await phone.Page.GetByText("not copied yet").WaitForAsync();
                await phone.GoAsync("rounds");
                await phone.Page.Locator(".list a").First.ClickAsync();
                await phone.Page.Locator(".pad .count", new() { HasText = "3" }).WaitForAsync();
                await Press(phone.Page, "Counted");
                await Press(phone.Page, "Keep the jar");
                await phone.Page.GetByText("3 mites kept").WaitForAsync();
                Assert.Empty(phone.Faults);
            }
        }
        finally
        {
            Kill(folder);
            Directory.Delete(folder, recursive: true);
        }
    }

    // Chromium lets go of the lock when the page is hidden; the page asks again when it comes back, and lets go when it is left.
    [Fact]
    public async Task Screen_WhileCollecting_StaysAwakeAndIsAskedAgainOnReturn()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.Context.AddInitScriptAsync("""
            window.locks = { asked: 0, held: 0 };
            Object.defineProperty(navigator, 'wakeLock', { value: { request: async () => {
              locks.asked++; locks.held++;
              const lock = { released: false, release: async () => { if (!lock.released) { lock.released = true; locks.held--; } } };
              window.lastLock = lock;
              return lock;
            } } });
            window.buzzes = [];
            navigator.vibrate = length => { buzzes.push(length); return true; };
            """);
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1-3");
        await visitor.GoAsync("rounds/new");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Draw the colonies" }).ClickAsync();
        await Press(visitor.Page, "Keep this round");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Found it" }).WaitForAsync();
        await visitor.UntilAsync("locks.held === 1");
        await visitor.Page.EvaluateAsync("lastLock.release().then(() => document.dispatchEvent(new Event('visibilitychange')))");
        await visitor.UntilAsync("locks.held === 1 && locks.asked === 2");

        await Press(visitor.Page, "Found it");
        await Press(visitor.Page, "She is safe");
        await Press(visitor.Page, "The bees are in the jar");
        await Press(visitor.Page, "Shaken");
        await visitor.Page.Locator(".pad").TapAsync();
        await visitor.UntilAsync("buzzes.length === 1");
        await visitor.GoAsync("rounds");
        await visitor.UntilAsync("locks.held === 0");
        Assert.Empty(visitor.Faults);
    }

    [Fact]
    public async Task HomeScreen_OfferedByTheBrowser_IsAskedForOnceAndPutOff()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        await using var visitor = await app.VisitAsync(host);
        await visitor.OpenAsync();
        await visitor.RegisterAsync("Heath", "1-3");
        await visitor.GoAsync("");
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "What is due" }).WaitForAsync();
        await Assertions.Expect(visitor.Page.GetByText("Put Foundress on the home screen.")).ToHaveCountAsync(0);
        const string offer = """
            window.asked = 0;
            const offer = new Event('beforeinstallprompt', { cancelable: true });
            offer.prompt = async () => { window.asked++; };
            offer.userChoice = Promise.resolve({ outcome: 'accepted' });
            dispatchEvent(offer);
            """;
        await visitor.Page.EvaluateAsync(offer);
        await Press(visitor.Page, "Put it there");
        await visitor.UntilAsync("window.asked === 1");
        await Assertions.Expect(visitor.Page.GetByText("Put Foundress on the home screen.")).ToHaveCountAsync(0);

        await visitor.Page.EvaluateAsync(offer);
        await Press(visitor.Page, "Not now");
        await Assertions.Expect(visitor.Page.GetByText("Put Foundress on the home screen.")).ToHaveCountAsync(0);
        await visitor.Page.ReloadAsync();
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "What is due" }).WaitForAsync();
        await visitor.Page.EvaluateAsync(offer);
        await visitor.GoAsync("settings");
        await visitor.Page.GetByText("Put Foundress on the home screen.").WaitForAsync();
        await visitor.GoAsync("");
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "What is due" }).WaitForAsync();
        // The page asks the device first whether it was put off: what is asked after it is answered after it.
        await visitor.UntilKeptAsync("store.countPending('home').then(() => true)");
        await Assertions.Expect(visitor.Page.GetByText("Put Foundress on the home screen.")).ToHaveCountAsync(0);
        Assert.Empty(visitor.Faults);
    }

    private static async Task SlowAsync(Visitor visitor, int times)
    {
        var tools = await visitor.Context.NewCDPSessionAsync(visitor.Page);
        await tools.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = times });
    }

    // As a flat battery does it: no process of this browser gets a chance to tidy up.
    private static void Kill(string folder)
    {
        foreach (var process in Process.GetProcesses())
        {
            try
            {
                if (File.ReadAllText($"/proc/{process.Id}/cmdline").Contains(folder, StringComparison.Ordinal))
                    process.Kill();
            }
            catch (Exception gone) when (gone is IOException or UnauthorizedAccessException or InvalidOperationException or System.ComponentModel.Win32Exception)
            {
                // It ended by itself meanwhile.
            }
        }
    }

    private static Task Press(IPage page, string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).TapAsync();
}
