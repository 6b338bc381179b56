namespace Foundress.Science.Dynamics.Bees;

/// <summary>How bees grow and how a colony's size holds its queen back: the same in every climate. All figures are data.</summary>
public sealed record BeeLives
{
    /// <summary>The most days any stage lasts together, as the brood kept in memory allows.</summary>
    internal const int MostBroodDays = 40;

    /// <summary>Days from the egg to the sealing of a worker cell, 1 or more.</summary>
    public required int WorkerOpenDays { get; init; }

    /// <summary>Days a worker cell is sealed, 1 or more.</summary>
    public required int WorkerSealedDays { get; init; }

    /// <summary>Days from the egg to the sealing of a drone cell, 1 or more.</summary>
    public required int DroneOpenDays { get; init; }

    /// <summary>Days a drone cell is sealed, 1 or more.</summary>
    public required int DroneSealedDays { get; init; }

    /// <summary>The share of eggs whose cells are sealed, above 0 and at most 1.</summary>
    public required double SealedShare { get; init; }

    /// <summary>The number of adult bees with which a queen lays half of what she would with any number of them, above 0.</summary>
    public required double HalfLayingBees { get; init; }

    /// <summary>Days by which spring is later for each degree further from the equator, 0 to 10.</summary>
    public required double SpringPerDegree { get; init; }

    /// <summary>Days by which the decline is earlier for each degree further from the equator, 0 to 10.</summary>
    public required double AutumnPerDegree { get; init; }

    /// <summary>Metres of altitude that count as much as one degree, above 0.</summary>
    public required double MetresPerDegree { get; init; }

    /// <summary>The most degrees by which a season is moved from its climate's own place, 0 to 20.</summary>
    public required double MostDegrees { get; init; }

    /// <summary>Relative spread of the adult bees of colonies of one place and day (standard deviation of the natural logarithm), above 0 and at most 1.5.</summary>
    public required double AdultSpread { get; init; }

    /// <summary>The same of brood.</summary>
    public required double BroodSpread { get; init; }

    /// <summary>Days in which what an inspection told of the bees falls to 1/e of its weight, above 0.</summary>
    public required double AdultMemory { get; init; }

    /// <summary>The same of brood.</summary>
    public required double BroodMemory { get; init; }

    /// <summary>Days from egg to bee.</summary>
    internal int WorkerDays => WorkerOpenDays + WorkerSealedDays;

    /// <summary>Days from egg to drone.</summary>
    internal int DroneDays => DroneOpenDays + DroneSealedDays;

    /// <summary>Refuses figures with which nothing can be reckoned.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range; the message names it.</exception>
    public void Check()
    {
        Within(WorkerOpenDays, 1, MostBroodDays / 2, nameof(WorkerOpenDays));
        Within(WorkerSealedDays, 1, MostBroodDays / 2, nameof(WorkerSealedDays));
        Within(DroneOpenDays, 1, MostBroodDays / 2, nameof(DroneOpenDays));
        Within(DroneSealedDays, 1, MostBroodDays / 2, nameof(DroneSealedDays));
        Within(SealedShare, 0.01, 1, nameof(SealedShare));
        Within(HalfLayingBees, 1, 1e6, nameof(HalfLayingBees));
        Within(SpringPerDegree, 0, 10, nameof(SpringPerDegree));
        Within(AutumnPerDegree, 0, 10, nameof(AutumnPerDegree));
        Within(MetresPerDegree, 1, 1e4, nameof(MetresPerDegree));
        Within(MostDegrees, 0, 20, nameof(MostDegrees));
        Within(AdultSpread, 0.01, 1.5, nameof(AdultSpread));
        Within(BroodSpread, 0.01, 1.5, nameof(BroodSpread));
        Within(AdultMemory, 1, 1000, nameof(AdultMemory));
        Within(BroodMemory, 1, 1000, nameof(BroodMemory));
    }

    internal static void Within(double value, double least, double most, string name)
    {
        if (!(value >= least && value <= most))
            throw new ArgumentOutOfRangeException(name, value, $"{name} must lie between {least} and {most}.");
    }
}
