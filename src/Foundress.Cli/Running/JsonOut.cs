using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Foundress.Cli.Running;

/// <summary>Writes results as JSON: camel case, enums by name, one indented object, days as yyyy-MM-dd.</summary>
internal static class JsonOut
{
    private static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        // Names in any script stay readable; the output is a file or a terminal, never part of a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
    };

    internal static void Write<T>(TextWriter text, T value) => text.WriteLine(Text(value));

    internal static string Text<T>(T value) => JsonSerializer.Serialize(value, Form);
}
