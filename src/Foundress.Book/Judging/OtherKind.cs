namespace Foundress.Book.Judging;

/// <summary>The counts that are not taken on a jar of bees. Each is on a scale of its own.</summary>
public enum OtherKind
{
    /// <summary>Mites fallen onto a board, a day.</summary>
    NaturalFall,

    /// <summary>Opened drone cells infested, per cent.</summary>
    DroneBrood,

    /// <summary>Opened worker cells infested, per cent.</summary>
    WorkerBrood,
}
