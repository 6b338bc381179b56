namespace Foundress.Cli.Running;

/// <summary>A value on the command line is wrong; the message names it and says how to put it right.</summary>
public sealed class UsageException : Exception
{
    /// <summary>An error with the message shown to the reader.</summary>
    public UsageException(string message)
        : base(message)
    {
    }

    /// <summary>An error with the message shown to the reader and what caused it.</summary>
    public UsageException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public UsageException()
        : base("The command cannot be carried out as it was given. Try --help.")
    {
    }
}
