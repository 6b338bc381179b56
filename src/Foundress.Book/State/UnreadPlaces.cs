using System.Text.Json;
using Foundress.Book.Journal;

namespace Foundress.Book.State;

/// <summary>
/// The colonies that a record of a newer version names in the fields that every kind uses for them, so that it shows in
/// their history although nothing else of it can be read here.
/// </summary>
internal static class UnreadPlaces
{
    internal static IReadOnlyList<ColonyId> ColoniesOf(string payload)
    {
        try
        {
            return Named(payload);
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException)
        {
            // Text that is no text, such as half a surrogate pair: then it names no colony either.
            return [];
        }
    }

    private static ColonyId[] Named(string payload)
    {
        using var document = JsonDocument.Parse(payload);
        var colonies = new List<ColonyId>();
        if (document.RootElement.TryGetProperty("colony"u8, out var one))
            Add(one);
        if (document.RootElement.TryGetProperty("colonies"u8, out var several) && several.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in several.EnumerateArray())
                Add(item);
        }

        return [.. colonies.Distinct()];

        void Add(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.String && element.TryGetGuid(out var id))
                colonies.Add(new ColonyId(id));
        }
    }
}
