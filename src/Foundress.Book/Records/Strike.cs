using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>
/// Strikes an entry out: it no longer counts, but stays readable in the book with the reason. Striking a strike brings
/// the first entry back.
/// </summary>
/// <param name="Entry">The entry that is struck.</param>
/// <param name="Reason">Why; never empty.</param>
public sealed record Strike(EntryId Entry, string Reason) : Record;
