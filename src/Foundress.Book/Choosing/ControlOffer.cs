using Foundress.Knowledge;

namespace Foundress.Book.Choosing;

/// <summary>A control held against a situation.</summary>
/// <param name="Agent">The control.</param>
/// <param name="Start">The day it would start.</param>
/// <param name="End">The day it would be over, by its usual days.</param>
/// <param name="Against">What rules it out; empty when nothing does.</param>
/// <param name="Missing">What must be known first.</param>
/// <param name="Mind">What to mind when it is used, cautions of the person first.</param>
public sealed record ControlOffer(
    ControlAgent Agent, DateOnly Start, DateOnly End, IReadOnlyList<Reason> Against, IReadOnlyList<Reason> Missing, IReadOnlyList<string> Mind)
{
    /// <summary>Whether it can be used.</summary>
    public Workability Workability => Against.Count > 0 ? Workability.RuledOut : Missing.Count > 0 ? Workability.NotKnown : Workability.Workable;
}
