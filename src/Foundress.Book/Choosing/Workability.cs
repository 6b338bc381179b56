namespace Foundress.Book.Choosing;

/// <summary>Whether a control can be used on a day.</summary>
public enum Workability
{
    /// <summary>Nothing speaks against it. The label still decides.</summary>
    Workable,

    /// <summary>Nothing known speaks against it, but something must be known first.</summary>
    NotKnown,

    /// <summary>Something rules it out.</summary>
    RuledOut,
}
