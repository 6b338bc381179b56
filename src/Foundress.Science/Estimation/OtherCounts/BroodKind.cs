namespace Foundress.Science.Estimation;

/// <summary>Which capped brood was opened. Mites prefer drone brood many times over, so the two are never compared.</summary>
public enum BroodKind
{
    /// <summary>Worker brood.</summary>
    Worker,

    /// <summary>Drone brood.</summary>
    Drone,
}
