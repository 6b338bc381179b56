using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Foundress.Book.Jobs;

/// <summary>Reads what jobs are asked and what they answer.</summary>
internal static class JobJson
{
    /// <summary>Reads a text.</summary>
    /// <param name="json">The text.</param>
    /// <param name="type">What it should hold.</param>
    /// <param name="otherwise">What it is when it does not, such as "no request for a forecast".</param>
    /// <exception cref="ArgumentException">It does not.</exception>
    internal static T Read<T>(string json, JsonTypeInfo<T> type, string otherwise)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize(json, type) ?? throw new ArgumentException($"This is {otherwise}: a JSON object is needed, not null.", nameof(json));
        }
        catch (JsonException error)
        {
            throw new ArgumentException($"This is {otherwise}: {error.Message}", nameof(json), error);
        }
    }
}
