using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Foundress.Knowledge.Tests;

/// <summary>
/// docs/knowledge.md lists everything that nobody has looked up yet. The list is made from the data, so it cannot lag behind:
/// run the tests once with FOUNDRESS_UPDATE_DOCS=1 to write it anew.
/// </summary>
public sealed class UncheckedListTests
{
    private const string Start = "<!-- generated list: start -->";
    private const string End = "<!-- generated list: end -->";

    [Fact]
    public void Documentation_ListOfFiguresFromMemory_IsUpToDate()
    {
        var path = Path.Combine(RepositoryRoot(), "docs", "knowledge.md");
        var text = File.ReadAllText(path);
        var (start, end) = (text.IndexOf(Start, StringComparison.Ordinal), text.IndexOf(End, StringComparison.Ordinal));
        Assert.True(start >= 0 && end > start, $"{path} must hold the lines {Start} and {End}.");
        var expected = $"{Start}\n{List()}{End}";

        if (Environment.GetEnvironmentVariable("FOUNDRESS_UPDATE_DOCS") == "1")
            File.WriteAllText(path, text[..start] + expected + text[(end + End.Length)..]);
        else
            Assert.Equal(expected, text[start..(end + End.Length)]);
    }

    private static string List()
    {
        var knowledge = KnowledgeBase.In(CultureInfo.InvariantCulture);
        var figures = knowledge.AllFigures().ToDictionary(f => f.Path, f => f.Figure, StringComparer.Ordinal);
        var list = new StringBuilder("\n| status | figures | statements |\n|---|---|---|\n");
        foreach (var group in knowledge.AllSources().GroupBy(s => s.Source.Status).OrderBy(g => g.Key))
            list.Append(CultureInfo.InvariantCulture, $"| {Words(group.Key)} | {group.Count(s => figures.ContainsKey(s.Path))} | {group.Count(s => !figures.ContainsKey(s.Path))} |\n");

        list.Append("\n| from memory, still to be checked | says | source as recalled |\n|---|---|---|\n");
        foreach (var (path, source) in knowledge.AllSources().Where(s => s.Source.Status == SourceStatus.FromMemory))
        {
            var says = figures.TryGetValue(path, out var figure) ? Print(figure) : Node(path)["text"]!.GetValue<string>();
            list.Append(CultureInfo.InvariantCulture, $"| {Place(path)} | {says} | {source.Text} |\n");
        }

        return list.Append('\n').ToString();
    }

    private static string Print(Figure f)
    {
        var number = f.ValueIsMidpoint ? $"{Number(f.Low!.Value)} to {Number(f.High!.Value)}" : Number(f.Value);
        return $"{number}{(f.Spread is { } spread ? $" ± {Number(spread)}" : "")} {(f.Unit == Units.One ? "(ratio)" : f.Unit)}";
    }

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Words(SourceStatus status) => status switch
    {
        SourceStatus.SecondHand => "second-hand",
        SourceStatus.FromMemory => "from memory",
        SourceStatus.CommonPractice => "common practice",
        SourceStatus.ProductChoice => "product choice",
        _ => status.ToString().ToLowerInvariant(),
    };

    private static JsonNode Node(string path) => DataFiles.At(DataFiles.Tree(path.Split('#')[0]), path.Split('#')[1]);

    /// <summary>The place told by ids where entries have one, since positions mean nothing to a reader.</summary>
    private static string Place(string path)
    {
        var node = DataFiles.Tree(path.Split('#')[0]);
        var place = new List<string>();
        foreach (var name in path.Split('#')[1].Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            node = DataFiles.At(node, name);
            place.Add(node is JsonObject o && o["id"] is { } id ? id.GetValue<string>() : name);
        }

        return $"`{path.Split('#')[0]}` {string.Join(" / ", place)}";
    }

    private static string RepositoryRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Foundress.slnx")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException($"No folder above {AppContext.BaseDirectory} holds Foundress.slnx: run the tests from a clone.");
    }
}
