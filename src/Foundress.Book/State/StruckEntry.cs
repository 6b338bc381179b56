using Foundress.Book.Journal;

namespace Foundress.Book.State;

/// <summary>The strike that took an entry out of account.</summary>
/// <param name="StruckBy">The entry that struck it.</param>
/// <param name="Reason">Why.</param>
public sealed record StruckEntry(Entry StruckBy, string Reason);
