using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Planning;

/// <summary>A control of a kept plan whose day comes.</summary>
/// <param name="Key">Names it from day to day.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Use">The control.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day on which it is still what was planned.</param>
/// <param name="Text">In words, as a sentence.</param>
public sealed record PlannedDue(string Key, ControlPlan Plan, PlannedUse Use, DateOnly From, DateOnly To, string Text);
