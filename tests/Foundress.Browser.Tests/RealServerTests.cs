using System.Security.Cryptography;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

public sealed class RealServerTests(PublishedApp app)
{
    [Fact]
    public async Task Record_KeptOffline_ReachesTheServerAndAnotherDevice()
    {
        await using var server = await app.ServeAsync();
        await using var phone = await app.VisitAsync(server.Site.GetLeftPart(UriPartial.Authority), keepsProgram: true);
        await phone.OpenAsync();
        await phone.OfflineReadyAsync();
        await phone.Context.SetOfflineAsync(true);
        await phone.Page.ReloadAsync();
        await phone.RegisterAsync("Hazel bank", "1-12");
        await phone.Page.GetByText("not copied yet: 13").WaitForAsync();
        await phone.Context.SetOfflineAsync(false);
        await phone.GoAsync("settings");
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Copy now" }).ClickAsync();
        await phone.Page.GetByText("Kept on this device and copied").WaitForAsync();

        await using var laptop = await app.VisitAsync(server.Site.GetLeftPart(UriPartial.Authority), 1440, 900);
        await laptop.OpenAsync();
        await laptop.Page.GetByRole(AriaRole.Link, new() { Name = "Hazel bank" }).ClickAsync();
        await laptop.Page.GetByRole(AriaRole.Heading, new() { Name = "12 colonies" }).WaitForAsync();
        Assert.Empty(phone.Faults);
        Assert.Empty(laptop.Faults);
    }

    [Fact]
    public async Task EveryListedFile_FetchedFromTheServer_HasItsHash()
    {
        await using var server = await app.ServeAsync();
        using var handler = new HttpClientHandler { AutomaticDecompression = System.Net.DecompressionMethods.All };
        using var http = new HttpClient(handler) { BaseAddress = server.Site };
        foreach (var (url, hash) in AssetManifest.Read(app.WebRoot))
        {
            var bytes = await http.GetByteArrayAsync(url);
            Assert.True("sha256-" + Convert.ToBase64String(SHA256.HashData(bytes)) == hash, $"{url} does not have the hash the service worker expects.");
        }
    }
}
