using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text.Json.Nodes;

namespace Foundress.Knowledge.Tests.Translations;

/// <summary>One value that can be reached from a knowledge base by its public properties.</summary>
/// <param name="Path">Where it is, by names and ids.</param>
/// <param name="Field">The field of the data files it comes from when it is a text for people; null for ids, units, numbers and words of closed sets.</param>
/// <param name="Value">The value in the invariant culture; empty for null.</param>
internal sealed record Reached(string Path, string? Field, string Value);

/// <summary>Everything a caller of the knowledge can show, found by walking through it: a new property is found without anybody thinking of it here.</summary>
internal static class SpokenTexts
{
    // Strings that are no words for people. All others are taken to be.
    private static readonly HashSet<string> Silent = new(StringComparer.Ordinal)
    {
        "Id", "ScaleId", "DefaultJarId", "ModeId", "GearIds", "AlsoUsedOn", "ColonyClass", "Unit", "Doi", "DefaultPolicyId", "Purpose",
    };

    public static Dictionary<string, JsonObject> Translations(string language) => KnowledgeBase.Files.ToDictionary(
        file => file,
        file => JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", Path.ChangeExtension(file, language + ".json"))))!.AsObject(),
        StringComparer.Ordinal);

    /// <summary>The translations of all files in one, which they are: <see cref="TranslationTests"/> holds that no wording has two.</summary>
    public static Dictionary<(string Field, string English), string> All(string language)
    {
        var all = new Dictionary<(string Field, string English), string>();
        foreach (var (field, english, words) in Translations(language).Values.SelectMany(Entries))
            all.TryAdd((field, english), words);
        return all;
    }

    public static IEnumerable<(string Field, string English, string Words)> Entries(JsonObject translation) =>
        translation.SelectMany(field => field.Value!.AsObject().Select(text => (field.Key, text.Key, text.Value!.GetValue<string>())));

    public static IReadOnlyList<string> Citations { get; } = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Translations", "Citations.txt"));

    /// <summary>All but the names files may use, which every language adds to.</summary>
    public static IReadOnlyList<Reached> Of(KnowledgeBase knowledge)
    {
        var found = new List<Reached>();
        Walk(knowledge, "", "", found);
        return found;
    }

    private static void Walk(object? value, string path, string field, List<Reached> found)
    {
        switch (value)
        {
            case null:
                found.Add(new(path, null, ""));
                break;
            case string text:
                found.Add(new(path, Silent.Contains(field) ? null : char.ToLowerInvariant(field[0]) + field[1..], text));
                break;
            case IFormattable plain:
                found.Add(new(path, null, plain.ToString(null, CultureInfo.InvariantCulture)));
                break;
            case bool flag:
                found.Add(new(path, null, flag ? "true" : "false"));
                break;
            case IEnumerable list:
                foreach (var (item, place) in list.Cast<object?>().Select((item, place) => (item, place)))
                    Walk(item, $"{path}/{(item as IHasId)?.Id ?? place.ToString(CultureInfo.InvariantCulture)}", field, found);
                break;
            default:
                foreach (var property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(one => one.GetIndexParameters().Length == 0))
                {
                    if (property.Name is not ("Language" or "Aliases"))
                        Walk(property.GetValue(value), $"{path}/{property.Name}", value is Source && property.Name == "Text" ? "source" : property.Name, found);
                }

                break;
        }
    }
}
