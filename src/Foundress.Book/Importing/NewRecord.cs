using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Importing;

/// <summary>A record to write into the book, with the id its entry must have so that importing it again records it once.</summary>
/// <param name="Id">The entry's id, made from the content.</param>
/// <param name="Record">What to record.</param>
public readonly record struct NewRecord(EntryId Id, Record Record);
