using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Foundress.Architecture.Tests.Texts;

/// <summary>One file of texts: its path in the tree, its language and what it holds.</summary>
internal sealed partial record ResourceFile(string Path, string? Language, IReadOnlyDictionary<string, string> Texts)
{
    /// <summary>The file of the same texts in English.</summary>
    public string English => Language is null ? Path : Path[..^$".{Language}.resx".Length] + ".resx";

    /// <summary>The class that is made of it.</summary>
    public string Class => System.IO.Path.GetFileNameWithoutExtension(English);

    /// <summary>The project it belongs to.</summary>
    public string Project => Path.Split('/')[1];

    public static IReadOnlyList<ResourceFile> All { get; } =
        [.. SourceTree.Files("src", ".resx").Select(file => Read(file.Path, file.Text))];

    private static ResourceFile Read(string path, string xml)
    {
        var language = NamedLanguage().Match(path);
        return new ResourceFile(
            path,
            language.Success ? language.Groups[1].Value : null,
            XDocument.Parse(xml).Root!.Elements("data").ToDictionary(data => data.Attribute("name")!.Value, data => data.Element("value")!.Value));
    }

    [GeneratedRegex(@"\.([a-z]{2})\.resx$")]
    private static partial Regex NamedLanguage();
}
