namespace Foundress.Knowledge;

/// <summary>A state of the colony that a control needs or works best in.</summary>
public enum ControlNeed
{
    /// <summary>No sealed brood. Written <c>broodless</c>.</summary>
    Broodless,

    /// <summary>Bees in the winter cluster. Written <c>cluster</c>.</summary>
    Cluster,

    /// <summary>Worker brood in the colony. Written <c>brood</c>.</summary>
    Brood,

    /// <summary>Drones being reared. Written <c>drone-brood</c>.</summary>
    DroneBrood,

    /// <summary>A queen that can be found, or one to give. Written <c>queen</c>.</summary>
    Queen,

    /// <summary>Bees moving about the combs. Written <c>active-bees</c>.</summary>
    ActiveBees,
}
