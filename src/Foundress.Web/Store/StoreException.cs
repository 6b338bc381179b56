namespace Foundress.Web.Store;

/// <summary>This device could not read or keep something; the message says what that means for the keeper and what to do.</summary>
public sealed class StoreException : Exception
{
    /// <summary>An error with the message shown to the keeper.</summary>
    public StoreException(string message)
        : base(message)
    {
    }

    /// <summary>An error with the message shown to the keeper and what caused it.</summary>
    public StoreException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public StoreException()
        : base(StoreTexts.Failed)
    {
    }
}
