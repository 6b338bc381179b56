namespace Foundress.Science;

/// <summary>Which half of the world a site lies in: its seasons are six months apart from the other's.</summary>
public enum Hemisphere
{
    /// <summary>North of the equator.</summary>
    North,

    /// <summary>South of the equator.</summary>
    South,
}
