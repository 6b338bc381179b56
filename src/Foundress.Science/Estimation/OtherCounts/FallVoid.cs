namespace Foundress.Science.Estimation;

/// <summary>Why a natural mite fall says nothing about the colony's mites.</summary>
public enum FallVoid
{
    /// <summary>There is no brood and the factor at hand is for colonies with brood: without brood far fewer mites die per day.</summary>
    /// <remarks>Branco, Kidd &amp; Pickard 2006, Apidologie 37:452-461: natural death is reliable if the colony has brood and is not collapsing.</remarks>
    NoBrood,

    /// <summary>The colony is collapsing: the fall no longer follows the mites on the bees.</summary>
    /// <remarks>Branco, Kidd &amp; Pickard 2006, Apidologie 37:452-461.</remarks>
    Collapsing,

    /// <summary>A control is working or has just ended: the fall is its kill, not natural death.</summary>
    /// <remarks>Common practice, no source.</remarks>
    UnderControl,

    /// <summary>Ants or other scavengers reached the board and carried mites off: the fall is a lower limit only.</summary>
    /// <remarks>Extension service advice (DLR Mayen).</remarks>
    Scavengers,
}
