using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Foundress.Knowledge.Tests;

/// <summary>The published schema, evaluated by a JSON Schema implementation that knows nothing of our reader.</summary>
public sealed class SchemaTests
{
    private static readonly string SchemaText = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Schema", "knowledge.schema.json"));
    private static readonly JsonSchema Schema = JsonSchema.FromText(SchemaText);

    public static TheoryData<string> Files => [.. KnowledgeBase.Files];

    internal static bool Accepts(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Evaluate_ShippedFile_IsValid(string file) => Assert.True(Accepts(DataFiles.Text(file)), file);

    [Theory]
    [MemberData(nameof(Files))]
    public void Evaluate_AnySourceStatusOrUnitRemoved_IsInvalid(string file)
    {
        var removed = 0;
        var shapes = new HashSet<string>(StringComparer.Ordinal);
        foreach (var tree in OneEntryEach(file))
        {
            Assert.True(Accepts(tree.ToJsonString()), $"{file} cut down to one entry");
            foreach (var (pointer, holder) in DataFiles.Objects(tree).ToArray())
            {
                // Places that differ only in their number in a list are judged by one and the same definition.
                var shape = string.Concat(pointer.Where(c => !char.IsAsciiDigit(c)));
                foreach (var field in new[] { "source", "status", "unit" }.Where(f => holder.ContainsKey(f) && shapes.Add($"{shape} {f}")).ToArray())
                {
                    var kept = holder[field]!.DeepClone();
                    holder.Remove(field);
                    Assert.False(Accepts(tree.ToJsonString()), $"{pointer} without {field} was accepted: {tree.ToJsonString()}");
                    holder[field] = kept;
                    removed++;
                }
            }
        }

        Assert.True(removed >= 2, $"only {removed} fields were removed");
    }

    /// <summary>The file cut into files of one entry each, which are as valid as the whole and quicker to evaluate.</summary>
    private static IEnumerable<JsonNode> OneEntryEach(string file)
    {
        var whole = DataFiles.Tree(file).AsObject();
        foreach (var (name, content) in whole.Where(p => p.Key != "$schema").ToArray())
        {
            var parts = content is JsonArray entries ? entries.Select(entry => (JsonNode)new JsonArray(entry!.DeepClone())) : [content!.DeepClone()];
            foreach (var part in parts)
            {
                var cut = new JsonObject();
                foreach (var (other, others) in whole.Where(p => p.Key != "$schema"))
                    cut[other] = other == name ? part : others is JsonArray ? new JsonArray() : others!.DeepClone();
                yield return cut;
            }
        }
    }

    [Fact]
    public void Definitions_ClosedSets_AreThoseOfTheReader()
    {
        var definitions = JsonNode.Parse(SchemaText)!["$defs"]!;
        string[] Set(string name) => [.. definitions[name]!["enum"]!.AsArray().Select(n => n!.GetValue<string>())];

        Assert.Equal(Units.All, Set("unit"));
        foreach (var status in Set("status"))
            DataFiles.ReadWith("judging.json", WithStatus(status));
        Assert.Equal(Enum.GetValues<SourceStatus>().Length, Set("status").Length);
    }

    private static string WithStatus(string status)
    {
        var tree = DataFiles.Tree("judging.json");
        var figure = tree["judging"]!["confidence"]!;
        figure["status"] = status;
        figure["source"] = $"{status}, no source";
        return tree.ToJsonString();
    }
}
