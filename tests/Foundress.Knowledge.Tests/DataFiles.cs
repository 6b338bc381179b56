using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Foundress.Knowledge.Tests;

/// <summary>The shipped data files as text and trees that a test may spoil.</summary>
internal static class DataFiles
{
    private static readonly Dictionary<string, byte[]> Shipped =
        KnowledgeBase.Files.ToDictionary(file => file, file => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Data", file)), StringComparer.Ordinal);

    public static string Text(string file) => Encoding.UTF8.GetString(Shipped[file]);

    public static JsonNode Tree(string file) => JsonNode.Parse(Shipped[file])!;

    /// <summary>Reads the knowledge with one file replaced.</summary>
    public static KnowledgeBase ReadWith(string file, string content) =>
        KnowledgeBase.Read(name => new MemoryStream(name == file ? Encoding.UTF8.GetBytes(content) : Shipped[name]));

    /// <summary>Reads the knowledge with one file spoilt by <paramref name="spoil"/>, and returns the refusal.</summary>
    public static KnowledgeException RefusalOf(string file, Action<JsonNode> spoil)
    {
        var tree = Tree(file);
        spoil(tree);
        return Assert.Throws<KnowledgeException>(() => ReadWith(file, tree.ToJsonString()));
    }

    /// <summary>The JSON Pointer of every object in a tree, the root included.</summary>
    public static IEnumerable<(string Pointer, JsonObject Object)> Objects(JsonNode tree) =>
        All(tree, "").Where(n => n.Node is JsonObject).Select(n => (n.Pointer, (JsonObject)n.Node!));

    /// <summary>The JSON Pointer of every node in a tree, the root included.</summary>
    public static IEnumerable<(string Pointer, JsonNode? Node)> All(JsonNode? node, string pointer)
    {
        yield return (pointer, node);
        var children = node switch
        {
            JsonObject o => o.Select(p => (Name: p.Key, p.Value)),
            JsonArray a => a.Select((e, i) => (Name: i.ToString(CultureInfo.InvariantCulture), Value: e)),
            _ => [],
        };
        foreach (var child in children.SelectMany(c => All(c.Value, $"{pointer}/{c.Name}")))
            yield return child;
    }

    public static JsonNode At(JsonNode tree, string pointer) =>
        pointer.Split('/', StringSplitOptions.RemoveEmptyEntries)
            .Aggregate(tree, (node, name) => node is JsonArray a ? a[int.Parse(name, CultureInfo.InvariantCulture)]! : node[name]!);
}
