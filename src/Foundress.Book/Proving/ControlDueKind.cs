namespace Foundress.Book.Proving;

/// <summary>What is due because of a control.</summary>
public enum ControlDueKind
{
    /// <summary>Take it out, or give the last dose.</summary>
    TakeOut,

    /// <summary>Take the jars after.</summary>
    Prove,

    /// <summary>The withdrawal period is over.</summary>
    WithdrawalOver,

    /// <summary>Supers may go on again.</summary>
    SupersBack,
}
