using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>A plan of controls that stands: neither struck nor replaced.</summary>
/// <param name="Entry">The entry that recorded it.</param>
/// <param name="Facts">What was recorded.</param>
public sealed record ControlPlan(Entry Entry, ControlPlanRecord Facts);
