using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>
/// A whole book as a file: JSON Lines, UTF-8. First a line that says what it is, then one entry a line in the book's order,
/// struck ones and ones of newer versions too, then a line with their number and the SHA-256 of the lines before it.
/// </summary>
/// <remarks>The same entries always give the same bytes, so two books are equal when their files are.</remarks>
public static class BookFile
{
    /// <summary>The media type of JSON Lines.</summary>
    public const string MediaType = "application/x-ndjson";

    /// <summary>The form that this version writes and reads.</summary>
    public const int Form = 1;

    private const string Mark = "foundress-book";
    private const int FlushAt = 64 * 1024;

    // The longest payload with every character escaped, and the other fields.
    private const int GreatestLine = 600_000;

    /// <summary>Writes a book.</summary>
    /// <param name="target">Where to; it is left open.</param>
    /// <param name="operation">The operation.</param>
    /// <param name="entries">Its entries in the book's order.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The SHA-256 that the last line bears, in hexadecimal digits.</returns>
    public static async Task<string> WriteAsync(Stream target, string operation, IEnumerable<Entry> entries, CancellationToken cancellation = default)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var waiting = new ArrayBufferWriter<byte>(FlushAt);
        var count = 0;
        Write(waiting, writer =>
        {
            writer.WriteString("file"u8, Mark);
            writer.WriteNumber("form"u8, Form);
            writer.WriteString("operation"u8, operation);
        });
        foreach (var entry in entries)
        {
            WriteEntry(waiting, entry);
            count++;
            if (waiting.WrittenCount < FlushAt)
                continue;
            hash.AppendData(waiting.WrittenSpan);
            await target.WriteAsync(waiting.WrittenMemory, cancellation);
            waiting.Clear();
        }

        hash.AppendData(waiting.WrittenSpan);
        var digest = Convert.ToHexStringLower(hash.GetHashAndReset());
        Write(waiting, writer =>
        {
            writer.WriteString("end"u8, Mark);
            writer.WriteNumber("entries"u8, count);
            writer.WriteString("sha256"u8, digest);
        });
        await target.WriteAsync(waiting.WrittenMemory, cancellation);
        return digest;
    }

    /// <summary>Reads a book. Nothing is thrown for a damaged line: it is named, and the others are read.</summary>
    /// <exception cref="EntryFormatException">It is no such file, or one of a newer form.</exception>
    public static BookFileContent Read(Stream source)
    {
        using var lines = new LineReader(source, GreatestLine);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var entries = new List<Entry>();
        var problems = new List<LineProblem>();
        string? operation = null;
        while (lines.Next() is { } line)
        {
            if (operation is null)
            {
                operation = ReadHead(line);
                Take(hash, line);
                continue;
            }

            if (TryReadEnd(line) is { } end)
                return new BookFileContent(operation, entries, problems, FaultOf(end, entries.Count + problems.Count, hash, lines));
            Take(hash, line);
            try
            {
                entries.Add(ReadEntry(line, operation));
            }
            catch (EntryFormatException error)
            {
                problems.Add(new LineProblem(lines.Number, lines.WasTooLong ? ExchangeTexts.FormatLineTooLong(GreatestLine) : error.Message));
            }
        }

        return operation is null
            ? throw new EntryFormatException(ExchangeTexts.FileEmpty)
            : new BookFileContent(operation, entries, problems, ExchangeTexts.FormatFileBreaksOff(lines.Number));
    }

    private static string? FaultOf((int Entries, string Sha256) end, int found, IncrementalHash hash, LineReader lines)
    {
        var digest = Convert.ToHexStringLower(hash.GetHashAndReset());
        var number = lines.Number;
        if (lines.Next() is not null)
            return ExchangeTexts.FormatMoreAfterEnd(number);
        if (end.Entries != found)
            return ExchangeTexts.FormatEntriesDiffer(end.Entries, found);
        return digest == end.Sha256 ? null : ExchangeTexts.DigestDiffers;
    }

    private static void Take(IncrementalHash hash, ReadOnlyMemory<byte> line)
    {
        hash.AppendData(line.Span);
        hash.AppendData("\n"u8);
    }

    private static void WriteEntry(ArrayBufferWriter<byte> waiting, Entry entry)
    {
        // A payload is kept as it was received. One that was written over several lines would break the line here, so it
        // goes as text.
        if (!entry.Payload.AsSpan().ContainsAny('\n', '\r'))
        {
            using (var writer = new Utf8JsonWriter(waiting))
                EntryJson.Write(writer, entry);
            waiting.Write("\n"u8);
            return;
        }

        Write(waiting, writer =>
        {
            writer.WritePropertyName("entry"u8);
            EntryJson.Write(writer, entry with { Payload = "{}" });
            writer.WriteString("payloadText"u8, entry.Payload);
        });
    }

    private static void Write(ArrayBufferWriter<byte> waiting, Action<Utf8JsonWriter> fields)
    {
        using (var writer = new Utf8JsonWriter(waiting))
        {
            writer.WriteStartObject();
            fields(writer);
            writer.WriteEndObject();
        }

        waiting.Write("\n"u8);
    }

    private static string ReadHead(ReadOnlyMemory<byte> line)
    {
        using var document = TryParse(line);
        if (document?.RootElement is not { ValueKind: JsonValueKind.Object } head || Text(head, "file") != Mark || Text(head, "operation") is not { Length: > 0 } operation)
            throw new EntryFormatException(ExchangeTexts.NotABookFile);
        if (!head.TryGetProperty("form"u8, out var form) || !form.TryGetInt32(out var number) || number != Form)
            throw new EntryFormatException(ExchangeTexts.FormatFormUnknown(head.TryGetProperty("form"u8, out form) ? form.ToString() : "?", Form));
        return operation;
    }

    private static (int Entries, string Sha256)? TryReadEnd(ReadOnlyMemory<byte> line)
    {
        if (!line.Span.StartsWith("{\"end\":"u8))
            return null;
        using var document = TryParse(line);
        return document?.RootElement is { ValueKind: JsonValueKind.Object } end && Text(end, "end") == Mark && Text(end, "sha256") is { } digest
            && end.TryGetProperty("entries"u8, out var count) && count.ValueKind == JsonValueKind.Number && count.TryGetInt32(out var entries)
            ? (entries, digest)
            : null;
    }

    private static Entry ReadEntry(ReadOnlyMemory<byte> line, string operation)
    {
        var entry = line.Span.StartsWith("{\"entry\":"u8) ? ReadWrapped(line) : EntryJson.Read(Encoding.UTF8.GetString(line.Span));
        return entry.Operation == operation
            ? entry
            : throw new EntryFormatException(ExchangeTexts.FormatOtherOperation(entry.Operation, operation));
    }

    private static Entry ReadWrapped(ReadOnlyMemory<byte> line)
    {
        using var document = TryParse(line);
        if (document?.RootElement is not { ValueKind: JsonValueKind.Object } root || !root.TryGetProperty("entry"u8, out var inner) || Text(root, "payloadText") is not { } payload)
            throw new EntryFormatException(ExchangeTexts.WrappedWrong);
        // Read as any other, so that the same is asked of it.
        var text = EntryJson.Write(EntryJson.Read(inner));
        return EntryJson.Read(string.Concat(text.AsSpan(0, text.Length - "{}}".Length), payload, "}"));
    }

    private static string? Text(JsonElement element, string name)
    {
        try
        {
            return element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
        }
        catch (InvalidOperationException)
        {
            // Half a surrogate pair: valid JSON grammar, but no text.
            return null;
        }
    }

    private static JsonDocument? TryParse(ReadOnlyMemory<byte> line)
    {
        try
        {
            return JsonDocument.Parse(line);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
