namespace Foundress.Science.Forecasting;

/// <summary>What a count of mites was made on.</summary>
public enum EvidenceKind
{
    /// <summary>Mites brought off adult bees in a jar.</summary>
    Jar,

    /// <summary>Mites fallen on a board with no control at work.</summary>
    Fall,

    /// <summary>Worker cells found infested among those opened.</summary>
    WorkerCells,
}
