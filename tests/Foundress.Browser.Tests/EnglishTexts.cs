using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Foundress.Browser.Tests;

/// <summary>All English texts of the program, to find them where another language is spoken.</summary>
internal sealed class EnglishTexts
{
    private readonly HashSet<string> _whole;
    private readonly IReadOnlyList<Regex> _filled;

    private EnglishTexts(IEnumerable<string> texts)
    {
        var all = texts.ToList();
        _whole = [.. all.Where(text => !text.Contains('{', StringComparison.Ordinal))];
        _filled = [.. all.Where(text => Regex.Count(text, "[A-Za-z]{2,}(?![^{]*})") >= 2 && text.Contains('{', StringComparison.Ordinal))
            .Select(text => new Regex("^" + Regex.Replace(Regex.Escape(text), @"\\\{\w+}", ".+?") + "$", RegexOptions.CultureInvariant))];
    }

    /// <summary>Reads the English texts whose German differs.</summary>
    public static EnglishTexts Read()
    {
        var root = PublishedApp.RepositoryRoot();
        return new EnglishTexts(Directory.EnumerateFiles(Path.Combine(root, "src"), "*Texts.de.resx", SearchOption.AllDirectories)
            .SelectMany(file =>
            {
                var german = Of(file);
                return Of(file.Replace(".de.resx", ".resx", StringComparison.Ordinal)).Where(text => german[text.Key] != text.Value).Select(text => text.Value);
            })
            .Concat(Directory.EnumerateFiles(Path.Combine(root, "src/Foundress.Knowledge/Data"), "*.de.json").SelectMany(Facts))
            // Forms, and marks around a part that is drawn otherwise.
            .SelectMany(text => text.Split('␞', StringSplitOptions.TrimEntries))
            .SelectMany(text => text.Split(["[[", "]]"], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            .Where(text => Regex.IsMatch(text, "[A-Za-z]{4,}")));
    }

    /// <summary>Whether a text is one of them, filled in or not.</summary>
    public bool Holds(string text) => _whole.Contains(text) || _filled.Any(one => one.IsMatch(text));

    // The facts' German stands under the field and its English words.
    private static IEnumerable<string> Facts(string file)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(file));
        return [.. json.RootElement.EnumerateObject().Where(field => field.Value.ValueKind == JsonValueKind.Object)
            .SelectMany(field => field.Value.EnumerateObject()).Where(text => text.Value.ValueKind == JsonValueKind.String && text.Value.GetString() != text.Name).Select(text => text.Name)];
    }

    private static Dictionary<string, string> Of(string file) =>
        XDocument.Load(file).Root!.Elements("data").ToDictionary(data => data.Attribute("name")!.Value, data => data.Element("value")!.Value);
}
