using Foundress.Book.Journal;

namespace Foundress.Storage.Model;

/// <summary>Entries to rows and back.</summary>
internal static class EntryRows
{
    /// <summary>The columns of an entry but its sequence number, in the order of <see cref="Values"/>.</summary>
    public static readonly string[] Columns =
        ["operation", "id", "author", "device", "clock", "kind", "schema", "payload", "received_at"];

    public static object[] Values(StoredEntry row) =>
        [row.Operation, row.Id, row.Author, row.Device, row.Clock, row.Kind, row.Schema, row.Payload, row.ReceivedAt];

    public static StoredEntry ToRow(this Entry entry, DateTimeOffset received) => new()
    {
        Operation = entry.Operation,
        Id = entry.Id.Value,
        Author = entry.Author,
        Device = entry.Device,
        Clock = entry.Clock.ToString(),
        Kind = entry.Kind,
        Schema = entry.Schema,
        Payload = entry.Payload,
        ReceivedAt = received.ToUnixTimeMilliseconds(),
    };

    public static Entry ToEntry(this StoredEntry row) => HybridTime.TryParse(row.Clock, out var clock)
        ? new Entry(new EntryId(row.Id), row.Operation, row.Author, row.Device, clock, row.Kind, row.Schema, row.Payload)
        : throw new StorageException($"The database holds '{row.Clock}' where entry {row.Id} has its clock; restore a backup.");
}
