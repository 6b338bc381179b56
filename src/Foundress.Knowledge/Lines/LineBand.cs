namespace Foundress.Knowledge;

/// <summary>Where a bare level falls in a published table of lines, with no allowance for the uncertainty of the count.</summary>
public enum LineBand
{
    /// <summary>Below the first line of the row.</summary>
    Below,

    /// <summary>At or above the line from which a control may be needed, and not above the line beyond which it is.</summary>
    Between,

    /// <summary>Above the line beyond which a control is needed.</summary>
    Above,
}
