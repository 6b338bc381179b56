namespace Foundress.Science.Judging;

/// <summary>Where a colony stands in its year. Lines, sampling dates and controls depend on it.</summary>
public enum SeasonPhase
{
    /// <summary>Winter or dearth with no brood: every mite is on adult bees.</summary>
    DormantBroodless,

    /// <summary>Winter or dearth with some brood.</summary>
    DormantWithBrood,

    /// <summary>The colony is growing.</summary>
    Increase,

    /// <summary>The colony is at its largest.</summary>
    Peak,

    /// <summary>The colony is shrinking after its peak while mites still breed: the level per bee climbs fastest here.</summary>
    Decrease,
}
