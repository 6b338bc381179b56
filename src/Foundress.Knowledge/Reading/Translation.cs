using System.Text.Json;

namespace Foundress.Knowledge;

/// <summary>The texts of one data file in another language, found by their field and their English wording (docs/language.md).</summary>
/// <remarks>By the wording and not by the place, so that a changed caution is told in its new English words until somebody has translated it, and never in outdated ones.</remarks>
internal sealed class Translation
{
    private static readonly Translation None = new([]);
    private readonly Dictionary<(string Field, string English), string> _texts;

    private Translation(Dictionary<(string Field, string English), string> texts) => _texts = texts;

    /// <summary>The name of the file with the texts of a data file in a language: <c>agents.de.json</c>.</summary>
    public static string FileOf(string file, string language) => Path.ChangeExtension(file, $"{language}.json");

    /// <summary>The text of a field in the other language; the English one where it was not translated.</summary>
    public string Of(string field, string english) => _texts.GetValueOrDefault((field, english), english);

    /// <summary>Reads the texts of a data file; none where there is nothing to open.</summary>
    public static Translation Read(string file, Func<string, Stream?> open)
    {
        using var stream = open(file);
        if (stream is null)
            return None;
        try
        {
            using var document = JsonDocument.Parse(stream, new JsonDocumentOptions { AllowDuplicateProperties = false });
            var texts = new Dictionary<(string Field, string English), string>();
            foreach (var field in document.RootElement.EnumerateObject())
            {
                foreach (var text in field.Value.EnumerateObject())
                    texts.Add((field.Name, text.Name), text.Value.GetString() is { Length: > 0 } words ? words : throw Refusal(file, $"\"{field.Name}\" gives no words for \"{text.Name}\"."));
            }

            return new(texts);
        }
        catch (JsonException e)
        {
            throw new KnowledgeException($"The translation of {file} is not well-formed JSON: {e.Message}", e);
        }
        catch (InvalidOperationException e)
        {
            throw Refusal(file, e.Message);
        }
    }

    private static KnowledgeException Refusal(string file, string why) =>
        new($"The translation of {file} cannot be used: {why} Write it as {{ \"field\": {{ \"English text\": \"text in the other language\" }} }}.");
}
