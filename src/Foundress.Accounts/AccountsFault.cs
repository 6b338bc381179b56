namespace Foundress.Accounts;

/// <summary>Why something about accounts could not be done.</summary>
public enum AccountsFault
{
    /// <summary>A value is not one that can be taken; the message names it.</summary>
    Value,

    /// <summary>It goes against what is there: a name is taken, the last keeper would be gone.</summary>
    Conflict,

    /// <summary>It is not there, or no longer.</summary>
    Gone,

    /// <summary>The person asking may not do it.</summary>
    Forbidden,

    /// <summary>The accounts cannot be read or written.</summary>
    Store,

    /// <summary>There is no room left where they lie.</summary>
    NoRoom,
}
