namespace Foundress.Science.Sampling;

/// <summary>A point within a phase of the colonies' year.</summary>
public enum PhasePoint
{
    /// <summary>Its first day.</summary>
    Start,

    /// <summary>Its middle day.</summary>
    Middle,

    /// <summary>Its last day.</summary>
    End,
}
