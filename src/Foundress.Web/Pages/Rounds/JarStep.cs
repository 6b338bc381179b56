namespace Foundress.Web.Pages.Rounds;

/// <summary>The steps of one jar, in order.</summary>
public enum JarStep
{
    /// <summary>Walk to the colony.</summary>
    Find,

    /// <summary>Make sure that the queen stays behind.</summary>
    Queen,

    /// <summary>Take the bees.</summary>
    Scoop,

    /// <summary>Shake or swirl for the round's time.</summary>
    Shake,

    /// <summary>Let it stand for the round's time.</summary>
    Settle,

    /// <summary>Count the mites.</summary>
    Count,

    /// <summary>Wash the same bees again and count once more.</summary>
    Again,

    /// <summary>Say how many bees there were, and keep the jar.</summary>
    Bees,
}
