namespace Foundress.Book.Proving;

/// <summary>How the proof of a control stands.</summary>
public enum ProofState
{
    /// <summary>The control is still at work, or its jars are not due yet.</summary>
    Waiting,

    /// <summary>Jars after it are due.</summary>
    Due,

    /// <summary>The time for jars after it has passed without them.</summary>
    Overdue,

    /// <summary>There are jars after it.</summary>
    Done,
}
