namespace Foundress.Science.Judging;

/// <summary>Where a level stands against a line, given how sure one wants to be.</summary>
public enum Standing
{
    /// <summary>Surely enough below the line.</summary>
    Below,

    /// <summary>Not sure enough either way: sharpen the count or act with care.</summary>
    Unclear,

    /// <summary>Surely enough above the line.</summary>
    Above,
}
