using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Foundress.Reports.Exports;

/// <summary>Writes JSON text of our own files: indented, names in any script readable.</summary>
internal static class JsonText
{
    private static readonly JsonWriterOptions Form = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    internal static string Write(Action<Utf8JsonWriter> write)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Form))
            write(json);
        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length) + "\n";
    }

    internal static void Optional(this Utf8JsonWriter json, string name, string? text)
    {
        if (!string.IsNullOrWhiteSpace(text))
            json.WriteString(name, text);
    }

    internal static void Optional(this Utf8JsonWriter json, string name, double? number)
    {
        if (number is { } value)
            json.WriteNumber(name, value);
    }

    internal static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }
}
