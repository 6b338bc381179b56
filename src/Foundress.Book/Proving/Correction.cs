namespace Foundress.Book.Proving;

/// <summary>What an efficacy was corrected by.</summary>
public enum Correction
{
    /// <summary>Nothing: growth and natural death count as the control's doing.</summary>
    None,

    /// <summary>Untreated colonies of the same apiary (Henderson and Tilton).</summary>
    UntreatedColonies,

    /// <summary>The forecast of what would have been.</summary>
    Forecast,
}
