using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>An inspection that counts (was not struck).</summary>
/// <param name="Entry">The entry that recorded it.</param>
/// <param name="Facts">What was recorded.</param>
public sealed record Inspection(Entry Entry, InspectionRecord Facts);
