namespace Foundress.Book.Importing;

/// <summary>A file cannot be imported as a whole: it is not a CSV file of jars. Nothing of it was taken. The message says what to do.</summary>
public sealed class ImportFormatException : FormatException
{
    /// <summary>An error with the message shown to the reader.</summary>
    public ImportFormatException(string message)
        : base(message)
    {
    }

    /// <summary>An error with the message shown to the reader and what caused it.</summary>
    public ImportFormatException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public ImportFormatException()
        : base(ImportTexts.NotJars)
    {
    }
}
