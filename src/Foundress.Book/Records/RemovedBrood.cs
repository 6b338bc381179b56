namespace Foundress.Book.Records;

/// <summary>Which brood was taken out of a colony.</summary>
public enum RemovedBrood
{
    /// <summary>Drone brood, cut out or lifted out with its comb.</summary>
    Drone,

    /// <summary>Brood of every kind.</summary>
    All,
}
