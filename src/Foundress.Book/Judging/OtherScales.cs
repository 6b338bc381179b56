namespace Foundress.Book.Judging;

/// <summary>The scales, by their ids in the knowledge files, of the counts that are not taken on a jar of bees.</summary>
public static class OtherScales
{
    /// <summary>Mites fallen in a day.</summary>
    public const string Fall = "fall-per-day";

    /// <summary>Share of opened drone cells infested.</summary>
    public const string DroneCells = "drone-cells";

    /// <summary>Share of opened worker cells infested.</summary>
    public const string WorkerCells = "worker-cells";

    /// <summary>Stands for no set of lines in the settings: a choice once made can so be taken back.</summary>
    public const string NoLines = "none";
}
