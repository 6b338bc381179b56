namespace Foundress.Knowledge;

/// <summary>How a control comes into the colony.</summary>
public enum ControlForm
{
    /// <summary>Strips that bees walk over for weeks. Written <c>strips</c>.</summary>
    Strips,

    /// <summary>Something that evaporates in the hive: pads, gel, wafers, a dispenser. Written <c>evaporator</c>.</summary>
    Evaporator,

    /// <summary>A solution trickled between the combs. Written <c>trickle</c>.</summary>
    Trickle,

    /// <summary>Crystals heated to a vapour. Written <c>vapour</c>.</summary>
    Vapour,

    /// <summary>A solution sprayed on the bees. Written <c>spray</c>.</summary>
    Spray,

    /// <summary>A form the data does not describe further. Written <c>other</c>.</summary>
    Other,

    /// <summary>Work on combs, brood or queen. Written <c>husbandry</c>.</summary>
    Husbandry,
}
