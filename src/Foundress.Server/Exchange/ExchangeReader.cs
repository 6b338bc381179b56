using System.Text.Json;
using System.Text.Unicode;
using Foundress.Book.Journal;
using Foundress.Book.Wording;
using Foundress.Server.Problems;

namespace Foundress.Server.Exchange;

/// <summary>Reads an array of entries, so that one bad entry does not keep the others from being kept.</summary>
internal static class ExchangeReader
{
    /// <summary>The most entries in one exchange.</summary>
    public const int GreatestCount = 2_000;

    /// <summary>The most characters of an operation's name.</summary>
    public const int GreatestName = 200;

    // Entries are passed on inside a page, two levels down, to readers that stop at sixteen.
    private const int GreatestDepth = 12;

    /// <summary>Reads the body of an exchange.</summary>
    /// <param name="operation">The operation the entries must belong to.</param>
    /// <param name="utf8">The body.</param>
    /// <param name="now">The time: an entry that claims to be written more than a day later is not kept.</param>
    /// <exception cref="RequestProblemException">It is no array, or too long a one.</exception>
    public static ReadExchange Read(string operation, ReadOnlyMemory<byte> utf8, DateTimeOffset now)
    {
        using var document = Parse(utf8);
        if (document.RootElement.ValueKind != JsonValueKind.Array)
            throw Bad(ExchangeTexts.NotAnArray);
        if (document.RootElement.GetArrayLength() is var count and > GreatestCount)
        {
            throw new RequestProblemException(
                StatusCodes.Status413PayloadTooLarge, ExchangeTexts.FormatTooManyEntries(count, GreatestCount));
        }

        var entries = new List<Entry>();
        var refused = new List<RefusedEntry>();
        var index = 0;
        foreach (var element in document.RootElement.EnumerateArray())
        {
            try
            {
                var entry = EntryJson.Read(element);
                if (entry.Operation != operation)
                    refused.Add(new(index, entry.Id.ToString(), ExchangeTexts.FormatOtherOperation(entry.Operation, operation)));
                else if (Depth(element) > GreatestDepth)
                    refused.Add(new(index, entry.Id.ToString(), ExchangeTexts.FormatTooDeep(GreatestDepth - 1)));
                else if (ProblemWithClock(entry, now) is { } problem)
                    refused.Add(new(index, entry.Id.ToString(), problem));
                else
                    entries.Add(entry);
            }
            catch (EntryFormatException error)
            {
                refused.Add(new(index, IdOf(element), error.Message));
            }

            index++;
        }

        return new ReadExchange(entries, refused);
    }

    // Kept, it would win against every later change until that day comes. The device still has it, and puts it right.
    private static string? ProblemWithClock(Entry entry, DateTimeOffset now)
    {
        var ahead = entry.Clock.Milliseconds - now.ToUnixTimeMilliseconds();
        if (ahead <= HybridClock.Tolerance || now.ToUnixTimeMilliseconds() < HybridClock.Earliest)
            return null;
        var days = ahead / HybridClock.Tolerance;
        return Plural.Pick(days, ExchangeTexts.FormatClockAhead(days, Say.Day(DateOnly.FromDateTime(now.UtcDateTime))));
    }

    private static JsonDocument Parse(ReadOnlyMemory<byte> utf8)
    {
        // The parser checks text only when it is read, and payloads are kept unread.
        if (!Utf8.IsValid(utf8.Span))
            throw Bad(ExchangeTexts.NotUtf8);
        try
        {
            return JsonDocument.Parse(utf8);
        }
        catch (JsonException error)
        {
            throw Bad(ExchangeTexts.FormatNotJson(error.Message));
        }
    }

    private static string? IdOf(JsonElement element)
    {
        try
        {
            return element.ValueKind == JsonValueKind.Object && element.TryGetProperty("id"u8, out var id)
                && id.ValueKind == JsonValueKind.String && id.TryGetGuid(out var value)
                ? value.ToString("D")
                : null;
        }
        catch (InvalidOperationException)
        {
            // Escapes that spell half a surrogate pair: there is no id to tell. The reason for refusing says so.
            return null;
        }
    }

    private static int Depth(JsonElement element)
    {
        var deepest = 0;
        if (element.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in element.EnumerateObject())
                deepest = Math.Max(deepest, Depth(property.Value));
        }
        else if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in element.EnumerateArray())
                deepest = Math.Max(deepest, Depth(item));
        }
        else
        {
            return 0;
        }

        return deepest + 1;
    }

    private static RequestProblemException Bad(string message) => new(StatusCodes.Status400BadRequest, message);
}
