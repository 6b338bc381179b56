using System.Security.Cryptography;

namespace Foundress.Browser.Tests;

public sealed class PublishedFilesTests(PublishedApp app, ITestOutputHelper output)
{
    // Nothing on this list may grow unseen: on 1 Mbit/s every 125 kB is a second of a newcomer's first visit.
    // 3.0 MB held until controls, their proof, the register, the due list and plans came in: 170 kB. Texts in resources took 110 kB,
    // a class with a member for each (docs/decisions/0080-language.md); other languages are fetched only by who reads them.
    // The next to grow must be loaded when it is wanted, as the codes of labels are.
    private const long GreatestFirstLoad = 3_300_000;

    [Fact]
    public void FirstLoad_Compressed_StaysUnderTheLimit()
    {
        var sizes = AssetManifest.Read(app.WebRoot)
            .Where(asset => AssetManifest.IsKept(app.WebRoot, asset.Url))
            .Select(asset => (asset.Url, Size: CompressedSize(Path.Combine(app.WebRoot, asset.Url))))
            .OrderByDescending(asset => asset.Size)
            .ToList();
        Assert.Contains(sizes, asset => asset.Url == "_framework/dotnet.native.wasm");
        var total = sizes.Sum(asset => asset.Size);
        output.WriteLine($"{total:N0} bytes in {sizes.Count} files");
        foreach (var (url, size) in sizes.Take(15))
            output.WriteLine($"{size,10:N0}  {url}");
        Assert.True(total <= GreatestFirstLoad, $"The first load is {total:N0} bytes; the most is {GreatestFirstLoad:N0}.");
    }

    [Theory]
    [InlineData("System.Linq.Expressions")]
    [InlineData("System.Private.Xml")]
    [InlineData("System.Private.DataContractSerialization")]
    public void FirstLoad_HeavyAssembly_IsNotPartOfIt(string assembly) =>
        Assert.DoesNotContain(AssetManifest.Read(app.WebRoot), asset => asset.Url == $"_framework/{assembly}.wasm");

    [Fact]
    public void IndexPage_Published_HoldsNoPlaceholderAndNothingInline()
    {
        var page = File.ReadAllText(Path.Combine(app.WebRoot, "index.html"));
        Assert.DoesNotContain("#[", page, StringComparison.Ordinal);
        Assert.DoesNotContain("fingerprint", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("importmap", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("style=", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<style", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<script>", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("src=\"_framework/blazor.webassembly.js\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EveryListedFile_Fetched_HasItsHash()
    {
        await using var host = await PublishedHost.StartAsync(app.WebRoot);
        using var handler = new HttpClientHandler { AutomaticDecompression = System.Net.DecompressionMethods.All };
        using var http = new HttpClient(handler) { BaseAddress = new Uri(host.Address) };
        var assets = AssetManifest.Read(app.WebRoot);
        Assert.NotEmpty(assets);
        foreach (var (url, hash) in assets)
        {
            var bytes = await http.GetByteArrayAsync(url);
            Assert.True("sha256-" + Convert.ToBase64String(SHA256.HashData(bytes)) == hash, $"{url} does not have the hash the service worker expects.");
        }
    }

    private static long CompressedSize(string file) => new FileInfo(File.Exists(file + ".br") ? file + ".br" : file).Length;
}
