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
        var tree = DataFiles.Tree(file);
        foreach (var (pointer, holder) in DataFiles.Objects(tree).ToArray())
        {
            foreach (var field in new[] { "source", "status", "unit" }.Where(holder.ContainsKey).ToArray())
            {
                var kept = holder[field]!.DeepClone();
                holder.Remove(field);
                Assert.False(Accepts(tree.ToJsonString()), $"{file}#{pointer} without {field} was accepted");
                holder[field] = kept;
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
