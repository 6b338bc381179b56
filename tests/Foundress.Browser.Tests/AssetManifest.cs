using System.Text.Json;
using System.Text.RegularExpressions;

namespace Foundress.Browser.Tests;

/// <summary>The list of files the service worker keeps on the device, read from the published output.</summary>
internal static partial class AssetManifest
{
    internal static IReadOnlyList<(string Url, string Hash)> Read(string webRoot)
    {
        var script = File.ReadAllText(Path.Combine(webRoot, "service-worker-assets.js"));
        using var json = JsonDocument.Parse(script[script.IndexOf('{', StringComparison.Ordinal)..(script.LastIndexOf('}') + 1)]);
        return [.. json.RootElement.GetProperty("assets").EnumerateArray()
            .Select(asset => (asset.GetProperty("url").GetString()!, asset.GetProperty("hash").GetString()!))];
    }

    /// <summary>What the worker's own filter keeps: the endings listed in service-worker.published.js, less what is fetched later.</summary>
    internal static bool IsKept(string webRoot, string url)
    {
        var worker = File.ReadAllText(Path.Combine(webRoot, "service-worker.js"));
        const string Start = "/\\.(?:";
        var from = worker.IndexOf(Start, StringComparison.Ordinal) + Start.Length;
        var endings = worker[from..worker.IndexOf(')', from)].Split('|');
        return endings.Contains(Path.GetExtension(url).TrimStart('.')) && !url.StartsWith("service-worker", StringComparison.Ordinal)
            && !url.StartsWith("_framework/QRCoder.", StringComparison.Ordinal)
            && !OtherTexts().IsMatch(url)
            && url is not ("account.html" or "css/account.css" or "js/account.js" or "js/page.js" or "js/passkey.js" or "js/people.js" or "js/texts.js")
            && !AccountTexts().IsMatch(url);
    }

    // Of the page on people and devices, which is not kept.
    [GeneratedRegex(@"^js/texts\.[a-z]{2}\.js$")]
    private static partial Regex AccountTexts();

    // Texts of other languages than English: only those of the language that is read are fetched.
    [GeneratedRegex("^_framework/[a-z]{2}/")]
    private static partial Regex OtherTexts();
}
