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
        : base(SharedTexts.CannotBeCarriedOut)
    {
    }

    /// <summary>An error of one value, which the message names first.</summary>
    /// <param name="option">The option, or whatever the value came from.</param>
    /// <param name="value">The value as it was given.</param>
    /// <param name="problem">What is wrong with it and how to put it right.</param>
    /// <param name="inner">What caused it.</param>
    public static UsageException OfValue(string option, object value, string problem, Exception? inner = null) =>
        inner is null ? new(SharedTexts.FormatValueWrong(option, value, problem)) : new(SharedTexts.FormatValueWrong(option, value, problem), inner);
}
