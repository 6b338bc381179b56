using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;

namespace Foundress.Book.State;

/// <summary>An entry with its payload read once.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Record">What it says; null when this version cannot read it.</param>
/// <param name="IsUnreadable">Whether it is kept without counting; <see cref="ProblemOf"/> says why.</param>
internal readonly record struct ReadEntry(Entry Entry, Record? Record, bool IsUnreadable)
{
    internal static ReadEntry Of(Entry entry)
    {
        var (record, problem) = Read(entry);
        return new ReadEntry(entry, record, problem is not null);
    }

    /// <summary>Why an entry does not count, in the language of the reader who asks; null when it does.</summary>
    internal static string? ProblemOf(Entry entry) => Read(entry).Problem;

    private static (Record? Record, string? Problem) Read(Entry entry)
    {
        if (entry.Schema > RecordKinds.CurrentSchema)
            return (null, RecordTexts.FormatNewer(entry.Kind, entry.Schema, RecordKinds.CurrentSchema));
        var record = RecordJson.TryRead(entry.Kind, entry.Payload, out var problem);
        return record is not null && RecordSense.Problem(record) is { } nonsense
            ? (null, RecordTexts.FormatNonsense(entry.Kind, nonsense))
            : (record, problem);
    }
}
