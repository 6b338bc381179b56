namespace Foundress.Book.Choosing;

/// <summary>What a reason is about.</summary>
public enum Ground
{
    /// <summary>The temperature while it is at work.</summary>
    Temperature,

    /// <summary>Supers with honey for people.</summary>
    Supers,

    /// <summary>Brood.</summary>
    Brood,

    /// <summary>The winter cluster.</summary>
    Cluster,

    /// <summary>The same group was used last.</summary>
    Rotation,

    /// <summary>It is too soon after the last use, or another is still at work.</summary>
    Interval,

    /// <summary>Gear the keeper has or has not.</summary>
    Gear,

    /// <summary>The keeper does not want it.</summary>
    Refused,

    /// <summary>Certified organic keeping.</summary>
    Organic,

    /// <summary>The queen.</summary>
    Queen,
}
