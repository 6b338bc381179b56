namespace Foundress.Book.Journal;

/// <summary>Text that should hold a journal entry does not; the message names the field and what was expected.</summary>
public sealed class EntryFormatException : FormatException
{
    /// <summary>An error with the message shown to the reader.</summary>
    public EntryFormatException(string message)
        : base(message)
    {
    }

    /// <summary>An error with the message shown to the reader and what caused it.</summary>
    public EntryFormatException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public EntryFormatException()
        : base(EntryTexts.NotAnEntry)
    {
    }
}
