namespace Foundress.Book.Exchanging;

/// <summary>An exchange with the server did not come about; the message says why. Nothing is lost by it.</summary>
public sealed class ExchangeException : Exception
{
    /// <summary>An error with the message shown to the keeper.</summary>
    public ExchangeException(string message)
        : base(message)
    {
    }

    /// <summary>An error with the message shown to the keeper and what caused it.</summary>
    public ExchangeException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public ExchangeException()
        : base(ExchangeTexts.NoExchange)
    {
    }

    /// <summary>Whether signing in is what it takes.</summary>
    public bool NeedsSignIn { get; init; }

    /// <summary>Whether the server knows who asks and does not let them do this.</summary>
    public bool IsForbidden { get; init; }
}
