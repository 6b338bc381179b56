namespace Foundress.Knowledge;

/// <summary>A point within a phase of the colony's year.</summary>
public enum PhasePoint
{
    /// <summary>The first day of the phase.</summary>
    Start,

    /// <summary>The middle of the phase.</summary>
    Middle,

    /// <summary>The last day of the phase.</summary>
    End,
}
