namespace Foundress.Book.State;

/// <summary>How a colony ended.</summary>
public enum ColonyFate
{
    /// <summary>It died or was given up.</summary>
    Died,

    /// <summary>Its bees were joined to another colony.</summary>
    United,
}
