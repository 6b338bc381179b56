namespace Foundress.Storage;

/// <summary>
/// The book on disk could not be read or written. The message says what happened, to which file, and what to do; it is
/// meant for the keeper and holds nothing that was recorded.
/// </summary>
public sealed class StorageException : IOException
{
    /// <summary>An error with all its parts.</summary>
    /// <param name="fault">What kind of trouble it is.</param>
    /// <param name="file">The file or folder concerned.</param>
    /// <param name="message">What happened and what to do.</param>
    /// <param name="inner">What the database or the system said.</param>
    public StorageException(StorageFault fault, string file, string message, Exception? inner = null)
        : base(message, inner) => (Fault, File) = (fault, file);

    /// <summary>An error with a message only.</summary>
    public StorageException(string message)
        : base(message)
    {
    }

    /// <summary>An error with a message and its cause.</summary>
    public StorageException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public StorageException()
        : base("The book on disk could not be read or written.")
    {
    }

    /// <summary>What kind of trouble it is.</summary>
    public StorageFault Fault { get; }

    /// <summary>The file or folder concerned; empty when not known.</summary>
    public string File { get; } = "";
}
