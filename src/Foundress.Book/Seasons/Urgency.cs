namespace Foundress.Book.Seasons;

/// <summary>What an apiary asks of its keeper today, what matters most first.</summary>
public enum Urgency
{
    /// <summary>A jar of the last visit is over the line.</summary>
    OverTheLine,

    /// <summary>A jar of the last visit may be over the line.</summary>
    NotSettled,

    /// <summary>Jars were due and were not taken.</summary>
    Overdue,

    /// <summary>Jars of the last visit are over the line or not settled, a control was started since, and no jar after it says how it stands.</summary>
    Answered,

    /// <summary>Nothing of the kind.</summary>
    Rest,
}
