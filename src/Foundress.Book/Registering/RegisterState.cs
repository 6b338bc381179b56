namespace Foundress.Book.Registering;

/// <summary>Whether a row of the register holds.</summary>
public enum RegisterState
{
    /// <summary>It holds.</summary>
    Holds,

    /// <summary>A later record of the same use took its place.</summary>
    Replaced,

    /// <summary>It was struck out.</summary>
    Struck,
}
