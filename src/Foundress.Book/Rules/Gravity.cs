namespace Foundress.Book.Rules;

/// <summary>Whether a record may be kept in spite of a problem.</summary>
public enum Gravity
{
    /// <summary>Unusual but possible: shown before keeping, and kept, for the book records what happened.</summary>
    Doubt,

    /// <summary>Cannot be: not kept until it is put right.</summary>
    Error,
}
