namespace Foundress.Book.Records;

/// <summary>What happened to a colony's queen.</summary>
public enum QueenEvent
{
    /// <summary>She is gone or was killed; the colony raises another if it can.</summary>
    Lost,

    /// <summary>She was caged: she lays no more.</summary>
    Caged,

    /// <summary>She was let out of the cage.</summary>
    Released,

    /// <summary>Another queen was given in a cage or cell, in place of the one there was.</summary>
    Introduced,

    /// <summary>A new queen was found laying.</summary>
    NewLaying,

    /// <summary>She left with a swarm.</summary>
    Swarmed,
}
