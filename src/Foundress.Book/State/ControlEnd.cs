using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>The end of a use of a control that counts (was not struck).</summary>
/// <param name="Entry">The entry that recorded it.</param>
/// <param name="Facts">What was recorded.</param>
public sealed record ControlEnd(Entry Entry, ControlEnded Facts);
