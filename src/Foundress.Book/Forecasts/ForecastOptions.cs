using Foundress.Book.Journal;

namespace Foundress.Book.Forecasts;

/// <summary>How a forecast is worked out.</summary>
public sealed record ForecastOptions
{
    /// <summary>Possible courses for each colony, 64 to 100,000: 2,000 by default, fewer where time is short.</summary>
    public int Particles { get; init; } = 2000;

    /// <summary>Days looked ahead, 1 to 366.</summary>
    public int Ahead { get; init; } = 120;

    /// <summary>Days of the record that are used, 30 to 1,000: what is older is left aside. 500 by default.</summary>
    public int RecordDays { get; init; } = 500;

    /// <summary>Seed of everything drawn: the same book, day and seed give the same forecast on every device.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The one colony to foretell, learning from all of its apiary; null, the default, for every colony.</summary>
    public ColonyId? Only { get; init; }

    /// <summary>A control to suppose, to see what it would change; none by default.</summary>
    public Supposition? Suppose { get; init; }
}
