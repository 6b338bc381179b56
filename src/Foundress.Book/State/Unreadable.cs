using Foundress.Book.Journal;

namespace Foundress.Book.State;

/// <summary>An entry that is kept but does not count, and why.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Problem">What is wrong with it, for the reader.</param>
public sealed record Unreadable(Entry Entry, string Problem);
