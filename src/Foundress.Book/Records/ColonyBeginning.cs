namespace Foundress.Book.Records;

/// <summary>How a colony began.</summary>
public enum ColonyBeginning
{
    /// <summary>A package of bees with a queen, no brood.</summary>
    Package,

    /// <summary>A swarm that was hived: bees with a queen, no brood.</summary>
    Swarm,

    /// <summary>A nucleus: a few frames of bees and brood with a laying queen.</summary>
    Nucleus,

    /// <summary>A whole colony that was bought or brought.</summary>
    Whole,
}
