namespace Foundress.Science.Judging;

/// <summary>Where a level stands to a line, given how sure the count makes us.</summary>
public enum Standing
{
    /// <summary>Surely enough below the line.</summary>
    Below,

    /// <summary>The count does not settle it.</summary>
    Unclear,

    /// <summary>Surely enough above the line.</summary>
    Above,
}
