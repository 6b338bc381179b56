namespace Foundress.Book.State;

/// <summary>How a course stands in one colony.</summary>
public enum CourseEnding
{
    /// <summary>It is still at work, or nobody said that it ended.</summary>
    Open,

    /// <summary>It ran for its whole time.</summary>
    AsPlanned,

    /// <summary>It was stopped before its time.</summary>
    StoppedEarly,

    /// <summary>Only a part was given or stayed in.</summary>
    Partial,

    /// <summary>The colony died or was united before it was over.</summary>
    ColonyEnded,
}
