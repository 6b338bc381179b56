using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.Published;

/// <summary>Makes the published JSON Schema of entries from the records themselves and the words that stand at them.</summary>
internal static partial class EntrySchema
{
    private const string Uuid = "^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$";
    private const string Day = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";

    private static readonly Dictionary<string, XElement> Words =
        XDocument.Load(Path.Combine(AppContext.BaseDirectory, "Foundress.Book.xml")).Descendants("member").ToDictionary(member => member.Attribute("name")!.Value);

    public static string Text()
    {
        var kinds = RecordKinds.All;
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = "urn:foundress:entry:1",
            ["title"] = "An entry of a Foundress book",
            ["description"] = "One immutable line of the book. An entry of a kind or form that is not described here is valid: it was written by a newer version and is kept and passed on as it is.",
            ["type"] = "object",
            ["properties"] = new JsonObject
            {
                ["id"] = Field("Made once by the device that wrote the entry. Two entries with the same id are the same entry.", Uuid),
                ["operation"] = Name("The keeper's operation the entry belongs to."),
                ["author"] = Name("Who wrote it down."),
                ["device"] = Name("The device it was written on."),
                ["clock"] = Field("When it was written down: milliseconds since 1970 UTC as twelve hexadecimal digits, a hyphen, and a counter of four.", "^[0-9a-fA-F]{12}-[0-9a-fA-F]{4}$"),
                ["kind"] = new JsonObject { ["type"] = "string", ["minLength"] = 1, ["maxLength"] = 200, ["description"] = "What sort of record the payload is.", ["examples"] = new JsonArray([.. kinds.Select(kind => (JsonNode)kind)]) },
                ["schema"] = new JsonObject { ["type"] = "integer", ["minimum"] = 1, ["maximum"] = int.MaxValue, ["description"] = "Version of the payload's form." },
                ["payload"] = new JsonObject { ["type"] = "object", ["description"] = "The record. Fields that are not described are kept and passed on." },
            },
            ["required"] = new JsonArray("id", "operation", "author", "device", "clock", "kind", "schema", "payload"),
            ["additionalProperties"] = false,
            ["allOf"] = new JsonArray([.. kinds.Select(When)]),
            ["$defs"] = new JsonObject(kinds.Select(kind => KeyValuePair.Create(kind, (JsonNode?)Payload(kind)))),
        };
        return schema.ToJsonString(new JsonSerializerOptions { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + "\n";
    }

    private static JsonNode When(string kind) => new JsonObject
    {
        ["if"] = new JsonObject
        {
            ["properties"] = new JsonObject { ["kind"] = new JsonObject { ["const"] = kind }, ["schema"] = new JsonObject { ["const"] = RecordKinds.CurrentSchema } },
            ["required"] = new JsonArray("kind", "schema"),
        },
        ["then"] = new JsonObject { ["properties"] = new JsonObject { ["payload"] = new JsonObject { ["$ref"] = "#/$defs/" + kind } } },
    };

    private static JsonNode Payload(string kind)
    {
        var type = RecordJson.TypeOf(kind)!;
        var schema = type.GetJsonSchemaAsNode(new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Transform });
        // A reference would point into the record's own schema, which stands deeper here.
        Assert.DoesNotContain("$ref", schema.ToJsonString(), StringComparison.Ordinal);
        var record = schema.AsObject();
        record["type"] = "object";
        record.Insert(0, "description", Said(Words["T:" + type.Type.FullName].Element("summary")!));
        return record;
    }

    private static JsonNode Transform(JsonSchemaExporterContext context, JsonNode schema)
    {
        var node = schema as JsonObject ?? [];
        // The exporter passes ids over where they may be absent or stand in a list, so they are put in from their holder.
        if (context.TypeInfo.Kind == JsonTypeInfoKind.Object && node["properties"] is JsonObject fields)
        {
            foreach (var field in context.TypeInfo.Properties.Where(field => fields.ContainsKey(field.Name)))
            {
                if (ElementOf(field.PropertyType) is { } element && IsId(element))
                    fields[field.Name]!.AsObject()["items"] = Plain(element, mayBeAbsent: false);
                else if (Nullable.GetUnderlyingType(field.PropertyType) is { } bare && IsPlain(bare))
                    fields[field.Name] = Plain(bare, mayBeAbsent: true, fields[field.Name] as JsonObject);
            }
        }
        else if (IsPlain(context.TypeInfo.Type))
        {
            node = Plain(context.TypeInfo.Type, mayBeAbsent: false);
        }

        if (context.PropertyInfo is { } property && Described(property.DeclaringType, property.Name) is { } words)
            node.Insert(0, "description", words);
        return node.Count == 0 ? schema : node;
    }

    private static bool IsPlain(Type type) => IsId(type) || type == typeof(DateOnly);

    private static bool IsId(Type type) => type.GetInterfaces().Any(one => one.IsGenericType && one.GetGenericTypeDefinition() == typeof(IId<>));

    private static Type? ElementOf(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? type.GetGenericArguments()[0] : null;

    private static JsonObject Plain(Type type, bool mayBeAbsent, JsonObject? before = null)
    {
        var node = new JsonObject();
        if (before?["description"] is { } words)
            node["description"] = words.DeepClone();
        node["type"] = mayBeAbsent ? new JsonArray("string", "null") : "string";
        node["format"] = IsId(type) ? "uuid" : "date";
        node["pattern"] = IsId(type) ? Uuid : Day;
        if (mayBeAbsent)
            node["default"] = null;
        return node;
    }

    private static string? Described(Type declaring, string name)
    {
        var parameter = Words.GetValueOrDefault("T:" + declaring.FullName)?.Elements("param")
            .FirstOrDefault(one => string.Equals(one.Attribute("name")!.Value, name, StringComparison.OrdinalIgnoreCase));
        return parameter is null ? null : Said(parameter);
    }

    private static string Said(XElement element) => Spaces().Replace(string.Concat(element.Nodes().Select(node => node switch
    {
        XText text => text.Value,
        XElement { Name.LocalName: "see" or "paramref" } reference => (reference.Attribute("cref") ?? reference.Attribute("name"))!.Value.Split('.', ':')[^1],
        XElement inner => inner.Value,
        _ => string.Empty,
    })).Trim(), " ");

    private static JsonObject Field(string words, string pattern) => new() { ["type"] = "string", ["pattern"] = pattern, ["description"] = words };

    private static JsonObject Name(string words) => new() { ["type"] = "string", ["minLength"] = 1, ["maxLength"] = 200, ["description"] = words };

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
