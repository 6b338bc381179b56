using Foundress.Book.Journal;

namespace Foundress.Storage.Model;

/// <summary>Entries to rows and back.</summary>
internal static class EntryRows
{
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
