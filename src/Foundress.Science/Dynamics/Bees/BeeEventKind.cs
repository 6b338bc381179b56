namespace Foundress.Science.Dynamics.Bees;

/// <summary>What changed a colony's bees, brood or queen on a day.</summary>
public enum BeeEventKind
{
    /// <summary>A colony began with bees and perhaps brood; before that day there was none.</summary>
    Began,

    /// <summary>The queen was lost or killed.</summary>
    QueenLost,

    /// <summary>The queen was caged and lays no more.</summary>
    QueenCaged,

    /// <summary>The queen was let out of the cage.</summary>
    QueenReleased,

    /// <summary>A new queen was found laying, or one that lays was given.</summary>
    NewQueenLaying,

    /// <summary>The colony swarmed with its queen; a young one follows.</summary>
    Swarmed,

    /// <summary>A part of the bees and of the brood was taken away.</summary>
    Divided,

    /// <summary>Bees, and perhaps brood, of another colony were added.</summary>
    Joined,

    /// <summary>A share of the drone brood was cut out.</summary>
    DroneBroodTaken,

    /// <summary>A share of all brood was taken away.</summary>
    BroodTaken,
}
