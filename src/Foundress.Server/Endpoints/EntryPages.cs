using System.Net.Mime;
using System.Text.Json;
using Foundress.Book.Journal;

namespace Foundress.Server.Endpoints;

/// <summary>Pages of entries as they are sent: written bit by bit, however long they are.</summary>
internal static class EntryPages
{
    private const int FlushAt = 64 * 1024;

    /// <summary>Writes a page.</summary>
    /// <param name="http">The request that is answered.</param>
    /// <param name="incarnation">The life of the book in which places hold.</param>
    /// <param name="members">What the page is a part of; null for the whole book.</param>
    /// <param name="entries">The entries.</param>
    /// <param name="next">The place to read on from.</param>
    /// <param name="more">Whether there are more now.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task WriteAsync(
        HttpContext http, Guid incarnation, string? members, IReadOnlyList<Entry> entries, long next, bool more, CancellationToken cancellation)
    {
        http.Response.ContentType = MediaTypeNames.Application.Json;
        await using var writer = new Utf8JsonWriter(http.Response.BodyWriter);
        writer.WriteStartObject();
        writer.WriteString("incarnation"u8, incarnation);
        if (members is not null)
            writer.WriteString("members"u8, members);
        writer.WriteStartArray("entries"u8);
        foreach (var entry in entries)
        {
            EntryJson.Write(writer, entry);
            if (writer.BytesPending <= FlushAt)
                continue;
            await writer.FlushAsync(cancellation);
            await http.Response.BodyWriter.FlushAsync(cancellation);
        }

        writer.WriteEndArray();
        writer.WriteNumber("next"u8, next);
        writer.WriteBoolean("more"u8, more);
        writer.WriteEndObject();
    }
}
