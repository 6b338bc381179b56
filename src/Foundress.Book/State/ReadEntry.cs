using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;

namespace Foundress.Book.State;

/// <summary>An entry with its payload read once.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Record">What it says; null when this version cannot read it.</param>
/// <param name="Problem">Why it could not be read.</param>
internal readonly record struct ReadEntry(Entry Entry, Record? Record, string? Problem)
{
    internal static ReadEntry Of(Entry entry)
    {
        if (entry.Schema > RecordKinds.CurrentSchema)
        {
            return new ReadEntry(entry, null,
                $"The {entry.Kind} record was written by a newer version (form {entry.Schema}; this one reads up to {RecordKinds.CurrentSchema}). It is kept unchanged; update to read it.");
        }

        var record = RecordJson.TryRead(entry.Kind, entry.Payload, out var problem);
        if (record is not null && RecordSense.Problem(record) is { } nonsense)
            return new ReadEntry(entry, null, $"The {entry.Kind} record makes no sense ({nonsense}). It is kept unchanged and does not count: strike it out and record it again.");
        return new ReadEntry(entry, record, problem);
    }
}
