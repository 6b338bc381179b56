using System.Globalization;
using System.Text.Json;

namespace Foundress.Knowledge;

/// <summary>
/// A JSON object being read, with its place. Each read that fails logs a problem and returns a stand-in, so that one reading
/// reports everything that is wrong; the stand-ins never leave the reader, which fails when the log holds a problem.
/// </summary>
internal sealed class Node
{
    private readonly ReadingLog _log;
    private readonly Translation _translation;
    private readonly JsonElement _element;

    public Node(ReadingLog log, Translation translation, string file, string pointer, JsonElement element, params ReadOnlySpan<string> fields)
    {
        (_log, _translation, File, Pointer, _element) = (log, translation, file, pointer, element);
        if (element.ValueKind != JsonValueKind.Object)
        {
            Problem("", $"expected an object with {string.Join(", ", fields.ToArray())}; found {Kind(element)}.");
            return;
        }

        // A misspelt optional field would otherwise be dropped in silence.
        foreach (var property in element.EnumerateObject())
        {
            if (!fields.Contains(property.Name))
                Problem("", $"\"{property.Name}\" is not a field here. Use one of: {string.Join(", ", fields.ToArray())}.");
        }
    }

    public string File { get; }

    public string Pointer { get; }

    public bool Has(string name) => Find(name) is not null;

    /// <summary>A text as it stands in the file: an id, a unit, a word of a closed set.</summary>
    public string Text(string name)
    {
        if (Required(name, "a text") is not { } value)
            return "";
        if (value.ValueKind == JsonValueKind.String && value.GetString() is { } text && !string.IsNullOrWhiteSpace(text))
            return text;
        Problem(name, $"expected a text that is not empty; found {Kind(value)}.");
        return "";
    }

    public string? OptionalText(string name) => Has(name) ? Text(name) : null;

    /// <summary>A text for people, in the language that is being read.</summary>
    public string Said(string name) => InLanguage(name, Text(name));

    public string? OptionalSaid(string name) => Has(name) ? Said(name) : null;

    public IReadOnlyList<string> OptionalSaids(string name) => [.. OptionalTexts(name).Select(text => InLanguage(name, text))];

    /// <summary>The text of a field in the language that is being read.</summary>
    public string InLanguage(string name, string english) => _translation.Of(name, english);

    public string Id()
    {
        var id = Text("id");
        if (id.Any(c => c is not ((>= 'a' and <= 'z') or (>= '0' and <= '9') or '-')))
            Problem("id", $"\"{id}\" may hold only the letters a-z, digits and hyphens.");
        return id;
    }

    public bool Flag(string name)
    {
        if (Required(name, "true or false") is not { } value)
            return false;
        if (value.ValueKind is not (JsonValueKind.True or JsonValueKind.False))
            Problem(name, $"expected true or false; found {Kind(value)}.");
        return value.ValueKind == JsonValueKind.True;
    }

    public double? OptionalNumber(string name)
    {
        if (Find(name) is not { } value)
            return null;
        if (value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var number) && double.IsFinite(number))
            return number;
        Problem(name, $"expected a finite number; found {Kind(value)}.");
        return null;
    }

    public double Number(string name)
    {
        Required(name, "a number");
        return OptionalNumber(name) ?? 0;
    }

    public T Choice<T>(string name, IReadOnlyDictionary<string, T> choices)
        where T : struct => Word(name, Required(name, $"one of {string.Join(", ", choices.Keys)}"), choices);

    public IReadOnlyList<T> Choices<T>(string name, IReadOnlyDictionary<string, T> choices)
        where T : struct => [.. Elements(name).Select(e => Word(e.Name, e.Element, choices))];

    public IReadOnlyList<string> OptionalTexts(string name)
    {
        var texts = new List<string>();
        foreach (var (place, element) in Has(name) ? Elements(name) : [])
        {
            if (element.ValueKind == JsonValueKind.String && element.GetString() is { } text && !string.IsNullOrWhiteSpace(text))
                texts.Add(text);
            else
                Problem(place, $"expected a text that is not empty; found {Kind(element)}.");
        }

        return texts;
    }

    public IReadOnlyList<int> OptionalMonths(string name)
    {
        var months = new List<int>();
        foreach (var (place, element) in Has(name) ? Elements(name) : [])
        {
            if (element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out var month) && month is >= 1 and <= 12)
                months.Add(month);
            else
                Problem(place, $"expected a month from 1 (January) to 12 (December); found {Kind(element)}.");
        }

        return months;
    }

    public IReadOnlyList<T> List<T>(string name, Func<Node, T> read, params string[] fields) =>
        [.. Elements(name).Select(e => read(new Node(_log, _translation, File, $"{Pointer}/{e.Name}", e.Element, fields)))];

    /// <summary>A list of entries whose names must differ.</summary>
    public IReadOnlyList<T> Named<T>(string name, Func<Node, T> read, params string[] fields)
        where T : class, IHasId
    {
        var entries = List(name, read, fields);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < entries.Count; i++)
        {
            if (!seen.Add(entries[i].Id))
                Problem($"{name}/{i}", $"a second entry named \"{entries[i].Id}\". Give each entry its own id.");
        }

        return entries;
    }

    public Node Child(string name, params string[] fields)
    {
        var element = Required(name, "an object");
        return new Node(_log, _translation, File, $"{Pointer}/{name}", element ?? EmptyObject, element is null ? [] : fields);
    }

    /// <summary>The source fields of this very object, for statements that are not numbers.</summary>
    public Source Source()
    {
        var source = SourceFields();
        _log.Sources.Add(($"{File}#{Pointer}", source));
        return source;
    }

    public Figure Figure(string name, string unit)
    {
        if (Required(name, "a figure with value, unit, source and status") is { } element)
            return FigureAt(name, element, unit);
        return new Figure(0, unit, new Source("", SourceStatus.FromMemory));
    }

    /// <summary>A figure whose value lies within bounds.</summary>
    public Figure FigureWithin(string name, string unit, double least, double most)
    {
        var figure = Figure(name, unit);
        if (Has(name) && !(figure.Value >= least && figure.Value <= most))
            Problem($"{name}/value", string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most} is needed here."));
        return figure;
    }

    public Figure? OptionalFigure(string name, string? unit) => Find(name) is { } element ? FigureAt(name, element, unit) : null;

    /// <summary>A figure whose unit the entry is free to choose.</summary>
    public Figure FigureOfAnyUnit(string name) =>
        Required(name, "a figure with value, unit, source and status") is { } element
            ? FigureAt(name, element, null)
            : new Figure(0, Units.One, new Source("", SourceStatus.FromMemory));

    public IReadOnlyList<Figure> Figures(string name, string unit) => [.. Elements(name).Select(e => FigureAt(e.Name, e.Element, unit))];

    public void Problem(string name, string message) =>
        _log.Problems.Add(new KnowledgeProblem(File, name.Length == 0 ? Pointer : $"{Pointer}/{name}", message));

    private static readonly JsonElement EmptyObject = JsonDocument.Parse("{}").RootElement;

    private static string Kind(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        _ => element.GetRawText(),
    };

    private Figure FigureAt(string name, JsonElement element, string? unit)
    {
        var node = new Node(_log, _translation, File, $"{Pointer}/{name}", element, "value", "unit", "spread", "low", "high", "source", "status", "doi");
        var figure = node.FigureFields(unit);
        _log.Figures.Add(($"{File}#{node.Pointer}", figure));
        _log.Sources.Add(($"{File}#{node.Pointer}", figure.Source));
        return figure;
    }

    private Figure FigureFields(string? expectedUnit)
    {
        var (value, spread, low, high) = (OptionalNumber("value"), OptionalNumber("spread"), OptionalNumber("low"), OptionalNumber("high"));
        var unit = Text("unit");
        if (unit.Length > 0 && !Units.All.Contains(unit))
            Problem("unit", $"\"{unit}\" is not a known unit. Use one of: {string.Join(", ", Units.All)}.");
        else if (unit.Length > 0 && expectedUnit is not null && unit != expectedUnit)
            Problem("unit", $"\"{unit}\" does not fit here. Use \"{expectedUnit}\".");
        if (low is null != high is null)
            Problem("", "\"low\" and \"high\" go together: add the other end of the range, or use value and spread.");
        if (!Has("value") && (low is null || high is null))
            Problem("", "\"value\" is missing. Add the number, or both \"low\" and \"high\" where the source prints only a range.");
        if (spread < 0)
            Problem("spread", string.Create(CultureInfo.InvariantCulture, $"{spread} is negative. Give the number printed after \"±\", 0 or more."));
        var number = value ?? ((low + high) / 2) ?? 0;
        if (low > number || number > high)
            Problem("", string.Create(CultureInfo.InvariantCulture, $"expected low ≤ value ≤ high; found {low} ≤ {number} ≤ {high}."));
        return new Figure(number, unit, SourceFields(), spread, low, high, value is null);
    }

    private Source SourceFields()
    {
        var text = Has("source")
            ? Text("source")
            : Missing("source", "Add where it was published, or \"common practice, no source\" or \"product choice, no source\" with the matching status.");
        var status = Has("status")
            ? Choice("status", Words.Statuses)
            : Words.Statuses[Missing("status", $"Add one of: {string.Join(", ", Words.Statuses.Keys)}.", "from memory")];
        var admission = status switch
        {
            SourceStatus.CommonPractice => "common practice, no source",
            SourceStatus.ProductChoice => "product choice, no source",
            _ => "",
        };
        if (text.Length > 0 && !text.StartsWith(admission, StringComparison.Ordinal))
            Problem("source", $"with that status the text must begin \"{admission}\"; found \"{text}\". Change the text, or the status if there is a source.");
        return new Source(InLanguage("source", text), status, OptionalText("doi"));
    }

    private string Missing(string name, string fix, string standIn = "")
    {
        Problem("", $"\"{name}\" is missing. {fix}");
        return standIn;
    }

    private JsonElement? Find(string name) =>
        _element.ValueKind == JsonValueKind.Object && _element.TryGetProperty(name, out var value) ? value : null;

    private JsonElement? Required(string name, string what)
    {
        var value = Find(name);
        if (value is null && _element.ValueKind == JsonValueKind.Object)
            Problem("", $"\"{name}\" is missing. Add {what}.");
        return value;
    }

    private IEnumerable<(string Name, JsonElement Element)> Elements(string name)
    {
        if (Required(name, "a list") is not { } list)
            return [];
        if (list.ValueKind == JsonValueKind.Array)
            return list.EnumerateArray().Select((element, i) => (string.Create(CultureInfo.InvariantCulture, $"{name}/{i}"), element));
        Problem(name, $"expected a list; found {Kind(list)}.");
        return [];
    }

    private T Word<T>(string name, JsonElement? value, IReadOnlyDictionary<string, T> choices)
        where T : struct
    {
        if (value is not { } element)
            return default;
        if (element.ValueKind == JsonValueKind.String && choices.TryGetValue(element.GetString()!, out var choice))
            return choice;
        Problem(name, $"expected one of {string.Join(", ", choices.Keys)}; found {Kind(element)}.");
        return default;
    }
}
