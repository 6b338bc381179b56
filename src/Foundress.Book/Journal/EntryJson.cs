using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace Foundress.Book.Journal;

/// <summary>
/// The JSON form of entries, the same in the browser's store, on the wire and in exports:
/// <c>{"id","operation","author","device","clock","kind","schema","payload":{…}}</c>.
/// </summary>
public static class EntryJson
{
    /// <summary>No payload may be longer than this many characters: a record of the field is a few hundred.</summary>
    public const int GreatestPayload = 65_536;

    private const int GreatestName = 200;

    private static readonly string[] Fields = ["id", "operation", "author", "device", "clock", "kind", "schema", "payload"];

    /// <summary>The entry as one line of JSON.</summary>
    public static string Write(Entry entry)
    {
        var buffer = new ArrayBufferWriter<byte>(512);
        using (var writer = new Utf8JsonWriter(buffer))
            Write(writer, entry);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>The entries as a JSON array.</summary>
    public static byte[] WriteMany(IEnumerable<Entry> entries)
    {
        var buffer = new ArrayBufferWriter<byte>(4096);
        using (var writer = new Utf8JsonWriter(buffer))
        {
            writer.WriteStartArray();
            foreach (var entry in entries)
                Write(writer, entry);
            writer.WriteEndArray();
        }

        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Writes the entry as an object.</summary>
    public static void Write(Utf8JsonWriter writer, Entry entry)
    {
        writer.WriteStartObject();
        writer.WriteString("id"u8, entry.Id.Value);
        writer.WriteString("operation"u8, entry.Operation);
        writer.WriteString("author"u8, entry.Author);
        writer.WriteString("device"u8, entry.Device);
        writer.WriteString("clock"u8, entry.Clock.ToString());
        writer.WriteString("kind"u8, entry.Kind);
        writer.WriteNumber("schema"u8, entry.Schema);
        writer.WritePropertyName("payload"u8);
        writer.WriteRawValue(entry.Payload);
        writer.WriteEndObject();
    }

    /// <summary>Reads one entry.</summary>
    /// <exception cref="EntryFormatException">The text is not an entry.</exception>
    public static Entry Read(string json)
    {
        using var document = Parse(Encoding.UTF8.GetBytes(json));
        return Read(document.RootElement);
    }

    /// <summary>Reads an array of entries.</summary>
    /// <exception cref="EntryFormatException">The text is not an array of entries.</exception>
    public static IReadOnlyList<Entry> ReadMany(ReadOnlyMemory<byte> utf8)
    {
        using var document = Parse(utf8);
        if (document.RootElement.ValueKind != JsonValueKind.Array)
            throw new EntryFormatException(EntryTexts.NotAnArray);
        var entries = new List<Entry>(document.RootElement.GetArrayLength());
        foreach (var element in document.RootElement.EnumerateArray())
            entries.Add(Read(element));
        return entries;
    }

    /// <summary>Reads one entry from a parsed object.</summary>
    /// <exception cref="EntryFormatException">A field is missing or of another form; the message names it.</exception>
    public static Entry Read(JsonElement element)
    {
        try
        {
            return ReadFields(element);
        }
        catch (InvalidOperationException error)
        {
            // A name with an escape that spells half a surrogate pair: valid JSON grammar, but no text.
            throw new EntryFormatException(EntryTexts.NamesNotText, error);
        }
    }

    private static Entry ReadFields(JsonElement element)
    {
        if (element.ValueKind != JsonValueKind.Object)
            throw new EntryFormatException(EntryTexts.NotAnObject);
        CheckNames(element);
        var idText = Text(element, "id");
        if (!Guid.TryParseExact(idText, "D", out var id))
            throw new EntryFormatException(EntryTexts.FormatIdWrong(idText));
        var clockText = Text(element, "clock");
        if (!HybridTime.TryParse(clockText, out var clock))
            throw new EntryFormatException(EntryTexts.FormatClockWrong(clockText));
        if (!element.TryGetProperty("schema", out var schemaElement) || schemaElement.ValueKind != JsonValueKind.Number
            || !schemaElement.TryGetInt32(out var schema) || schema < 1)
            throw new EntryFormatException(EntryTexts.SchemaMissing);
        if (!element.TryGetProperty("payload", out var payload) || payload.ValueKind != JsonValueKind.Object)
            throw new EntryFormatException(EntryTexts.PayloadMissing);
        var raw = payload.GetRawText();
        if (raw.Length > GreatestPayload)
            throw new EntryFormatException(EntryTexts.FormatPayloadTooLong(raw.Length, GreatestPayload));
        return new Entry(
            new EntryId(id), Text(element, "operation"), Text(element, "author"), Text(element, "device"),
            clock, Text(element, "kind"), schema, raw);
    }

    // What is not kept must not be taken: a field that was passed over here would be gone from every copy made from this one.
    // Inside the payload everything is kept.
    private static void CheckNames(JsonElement element)
    {
        var seen = 0;
        foreach (var field in element.EnumerateObject())
        {
            var place = Array.FindIndex(Fields, field.NameEquals);
            if (place < 0)
                throw new EntryFormatException(EntryTexts.FormatFieldUnknown(Short(field.Name)));
            if ((seen & (1 << place)) != 0)
                throw new EntryFormatException(EntryTexts.FormatFieldTwice(Fields[place]));
            seen |= 1 << place;
        }
    }

    private static string Short(string name) => name.Length <= 40 ? name : string.Concat(name.AsSpan(0, char.IsHighSurrogate(name[39]) ? 39 : 40), "…");

    private static JsonDocument Parse(ReadOnlyMemory<byte> utf8)
    {
        // The parser checks text only when it is read, and payloads are kept unread.
        if (!Utf8.IsValid(utf8.Span))
            throw new EntryFormatException(EntryTexts.NotUtf8);
        try
        {
            return JsonDocument.Parse(utf8, new JsonDocumentOptions { MaxDepth = 16 });
        }
        catch (JsonException error)
        {
            throw new EntryFormatException(EntryTexts.FormatNotJson((error.LineNumber ?? 0) + 1), error);
        }
    }

    private static string Text(JsonElement element, string name)
    {
        if (!element.TryGetProperty(name, out var value) || value.ValueKind != JsonValueKind.String)
            throw new EntryFormatException(EntryTexts.FormatTextMissing(name));
        string text;
        try
        {
            text = value.GetString()!;
        }
        catch (InvalidOperationException error)
        {
            // Escapes that spell half a surrogate pair: valid JSON grammar, but no text.
            throw new EntryFormatException(EntryTexts.FormatTextNotUnicode(name), error);
        }

        return text.Length is > 0 and <= GreatestName
            ? text
            : throw new EntryFormatException(EntryTexts.FormatTextLength(name, GreatestName, text.Length));
    }
}
