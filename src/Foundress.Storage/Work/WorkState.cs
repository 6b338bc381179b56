namespace Foundress.Storage.Work;

/// <summary>How far a piece of work has come.</summary>
public enum WorkState
{
    /// <summary>Nobody has it yet, or its last attempt failed and there are attempts left.</summary>
    Waiting,

    /// <summary>A worker has it, or had it and did not come back.</summary>
    Leased,

    /// <summary>It has its result.</summary>
    Done,

    /// <summary>Given up after the greatest number of attempts.</summary>
    Failed,
}
