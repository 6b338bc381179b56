namespace Foundress.Web.Background;

/// <summary>A job could not be done; the message says why.</summary>
public sealed class WorkException : Exception
{
    /// <summary>An error with the message shown to the keeper.</summary>
    public WorkException(string message)
        : base(message)
    {
    }

    /// <summary>An error with the message shown to the keeper and what caused it.</summary>
    public WorkException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public WorkException()
        : base(WorkTexts.NotDone)
    {
    }
}
