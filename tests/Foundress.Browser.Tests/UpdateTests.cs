using System.Security.Cryptography;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class UpdateTests(PublishedApp app)
{
    [Fact]
    public async Task NewVersion_Published_WaitsUntilAskedAndNeverUnderAForm()
    {
        var next = ChangedCopy();
        try
        {
            await using var host = await PublishedHost.StartAsync(app.WebRoot);
            await using var visitor = await app.VisitAsync(host, keepsProgram: true);
            var page = visitor.Page;
            await visitor.OpenAsync();
            await visitor.OfflineReadyAsync();
            await page.ReloadAsync();   // from here on the page is served by the worker
            await visitor.GoAsync("apiary/new");
            await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Being typed");

            host.Root = next;
            await page.EvaluateAsync("navigator.serviceWorker.getRegistration().then(r => r.update())");
            var banner = page.GetByText("A new version is ready.");
            await banner.WaitForAsync();
            var update = page.GetByRole(AriaRole.Button, new() { Name = "Update now" });
            await page.GetByText("Keep or empty the form first").WaitForAsync();
            Assert.True(await update.IsDisabledAsync());
            await Assertions.Expect(page.GetByLabel("Name", new() { Exact = true })).ToHaveValueAsync("Being typed");
            Assert.DoesNotContain("changed for the test", await StyleAsync(page), StringComparison.Ordinal);

            await page.GetByRole(AriaRole.Button, new() { Name = "Empty the form" }).ClickAsync();
            await page.EvaluateAsync("sessionStorage.setItem('loads', 0); addEventListener('pagehide', () => sessionStorage.setItem('loads', +sessionStorage.getItem('loads') + 1))");
            await update.ClickAsync();
            await visitor.UntilAsync("sessionStorage.getItem('loads') === '1'");
            await page.Locator("h1").WaitForAsync();
            Assert.Contains("changed for the test", await StyleAsync(page), StringComparison.Ordinal);
            Assert.Equal("1", await page.EvaluateAsync<string>("sessionStorage.getItem('loads')"));
            await Assertions.Expect(banner).ToHaveCountAsync(0);
            Assert.Empty(visitor.Faults);
        }
        finally
        {
            Directory.Delete(next, recursive: true);
        }
    }

    private static Task<string> StyleAsync(IPage page) => page.EvaluateAsync<string>("fetch('css/foundress.css').then(r => r.text())");

    // The next version differs in one file, its hash, and so in the version of the whole.
    private string ChangedCopy()
    {
        var copy = Directory.CreateTempSubdirectory("foundress-next-").FullName;
        foreach (var file in Directory.EnumerateFiles(app.WebRoot, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(copy, Path.GetRelativePath(app.WebRoot, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }

        var style = Path.Combine(copy, "css", "foundress.css");
        var old = Hash(style);
        File.AppendAllText(style, "\n/* changed for the test */\n");
        File.Delete(style + ".br");
        File.Delete(style + ".gz");
        var list = Path.Combine(copy, "service-worker-assets.js");
        var text = File.ReadAllText(list);
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(list, text.Replace(old, Hash(style), StringComparison.Ordinal).Replace("\"version\": \"", "\"version\": \"next", StringComparison.Ordinal));
        File.Delete(list + ".br");
        File.Delete(list + ".gz");
        return copy;
    }

    private static string Hash(string file) => "sha256-" + Convert.ToBase64String(SHA256.HashData(File.ReadAllBytes(file)));
}
