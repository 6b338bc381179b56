using Foundress.Book.State;

namespace Foundress.Book.Proving;

/// <summary>Something due because of a control.</summary>
/// <param name="Kind">What.</param>
/// <param name="Control">The use of the control.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day; the first where it is one day.</param>
/// <param name="Text">In words.</param>
/// <param name="Overdue">Whether the last day has passed.</param>
public sealed record ControlDue(ControlDueKind Kind, Control Control, DateOnly From, DateOnly To, string Text, bool Overdue);
