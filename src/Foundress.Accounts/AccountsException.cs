namespace Foundress.Accounts;

/// <summary>Something about accounts could not be done; the message says what and how to put it right.</summary>
public sealed class AccountsException : Exception
{
    /// <summary>An error with all its parts.</summary>
    public AccountsException(AccountsFault fault, string message, Exception? inner = null)
        : base(message, inner) => Fault = fault;

    /// <summary>An error with a message only.</summary>
    public AccountsException(string message)
        : base(message)
    {
    }

    /// <summary>An error with a message and its cause.</summary>
    public AccountsException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public AccountsException()
        : base(AccountsTexts.CannotBeDone)
    {
    }

    /// <summary>Why.</summary>
    public AccountsFault Fault { get; }
}
