namespace Foundress.Reports.Drawing;

/// <summary>What a row of a strip's table is about.</summary>
public enum StripRowKind
{
    /// <summary>A phase of the season.</summary>
    Phase,

    /// <summary>The lines in force.</summary>
    Line,

    /// <summary>Something due.</summary>
    Due,

    /// <summary>A control.</summary>
    Control,

    /// <summary>A jar.</summary>
    Jar,

    /// <summary>A count on another scale.</summary>
    Other,

    /// <summary>A day of the forecast.</summary>
    Forecast,
}
