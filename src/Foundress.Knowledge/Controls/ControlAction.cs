namespace Foundress.Knowledge;

/// <summary>What a control does to the colony, as the model takes it.</summary>
public enum ControlAction
{
    /// <summary>Kills a share of the mites each day. Written <c>kill</c>.</summary>
    Kill,

    /// <summary>Takes sealed drone cells out once. Written <c>remove-drone-brood</c>.</summary>
    RemoveDroneBrood,

    /// <summary>Takes sealed worker and drone cells out once. Written <c>remove-brood</c>.</summary>
    RemoveBrood,

    /// <summary>The queen lays no eggs that are reared for a time. Written <c>stop-laying</c>.</summary>
    StopLaying,

    /// <summary>A part of the bees and brood leaves. Written <c>split</c>.</summary>
    Split,

    /// <summary>Another queen, whose workers come in time. Written <c>requeen</c>.</summary>
    Requeen,
}
