namespace Foundress.Science.Judging;

/// <summary>What a phase says of the bees.</summary>
public static class SeasonPhases
{
    /// <summary>Whether the colony is dormant, with some brood or without any: in winter its bees cluster.</summary>
    /// <param name="phase">The phase.</param>
    public static bool IsDormant(this SeasonPhase phase) => phase is SeasonPhase.DormantBroodless or SeasonPhase.DormantWithBrood;
}
