using Foundress.Knowledge;

namespace Foundress.Book.Forecasts;

/// <summary>A control that is only supposed, to see what it would change.</summary>
/// <param name="Agent">What.</param>
/// <param name="On">The day it would begin.</param>
public sealed record Supposition(ControlAgent Agent, DateOnly On)
{
    /// <summary>The day it would end, after its usual time.</summary>
    public DateOnly End => On.AddDays(Math.Max(0, (int)Agent.Days.Value));
}
