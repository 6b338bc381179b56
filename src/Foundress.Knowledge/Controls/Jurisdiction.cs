namespace Foundress.Knowledge;

/// <summary>Whose law rules the label.</summary>
public enum Jurisdiction
{
    /// <summary>The European Union. Written <c>eu</c>.</summary>
    EuropeanUnion,

    /// <summary>The United Kingdom. Written <c>uk</c>.</summary>
    UnitedKingdom,

    /// <summary>The United States. Written <c>us</c>.</summary>
    UnitedStates,

    /// <summary>Canada. Written <c>canada</c>.</summary>
    Canada,

    /// <summary>New Zealand. Written <c>new-zealand</c>.</summary>
    NewZealand,

    /// <summary>Australia. Written <c>australia</c>.</summary>
    Australia,
}
