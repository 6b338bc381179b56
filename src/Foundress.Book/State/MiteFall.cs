using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>A natural fall that counts (was not struck).</summary>
/// <param name="Entry">The entry that recorded it.</param>
/// <param name="Facts">What was recorded.</param>
public sealed record MiteFall(Entry Entry, MiteFallRecord Facts);
