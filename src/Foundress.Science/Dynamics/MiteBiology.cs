namespace Foundress.Science.Dynamics;

/// <summary>
/// The figures of mite and colony life the model runs on. The values and their sources are knowledge, not code: see the
/// file of biology in the knowledge project and <c>docs/methods/forecast.md</c>.
/// </summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
public sealed record MiteBiology
{
    /// <summary>Days a worker cell stays sealed. Fixed by the bees.</summary>
    public const int WorkerSealedDays = 12;

    /// <summary>Days a drone cell stays sealed. Fixed by the bees.</summary>
    public const int DroneSealedDays = 14;

    /// <summary>Mated daughters for each mite that enters a worker cell alone, 0 to 5.</summary>
    public required double WorkerOffspring { get; init; }

    /// <summary>Mated daughters for each mite that enters a drone cell alone, 0 to 5.</summary>
    public required double DroneOffspring { get; init; }

    /// <summary>Share of the mothers that come back to adult bees, 0 to 1.</summary>
    public required double MotherReturn { get; init; }

    /// <summary>Share of the daughters lost when the bee emerges, 0 to 1.</summary>
    public required double EmergenceLoss { get; init; }

    /// <summary>Fall of the success of a mother in a worker cell for each further mother in it, on the log scale, 0 to 2.</summary>
    public required double WorkerCrowding { get; init; }

    /// <summary>The same for drone cells.</summary>
    public required double DroneCrowding { get; init; }

    /// <summary>Slowing of invasion against the rate of a single mite ready to enter, 0 to 2.</summary>
    public required double InvasionScale { get; init; }

    /// <summary>Invasion of worker cells: per mite and day, for each cell sealed that day and gram of bees, 0 to 10.</summary>
    public required double WorkerInvasion { get; init; }

    /// <summary>Invasion of drone cells, likewise, 0 to 100.</summary>
    public required double DroneInvasion { get; init; }

    /// <summary>Grams of an adult bee, 0.05 to 0.3.</summary>
    public required double BeeGrams { get; init; }

    /// <summary>Death of mites on adult bees per day while brood is reared, 0 to 0.1.</summary>
    public required double DeathWithBrood { get; init; }

    /// <summary>Death of mites on adult bees per day without brood, 0 to 0.1.</summary>
    public required double DeathBroodless { get; init; }

    /// <summary>Extra death of adult bees per day for each mite per bee, 0 to 1.</summary>
    public required double LoadHazard { get; init; }

    /// <summary>Share of the work of a bee's life lost when she was infested in her cell (death in the cell, shorter life), 0 to 1.</summary>
    public required double InfestedLoss { get; init; }

    /// <summary>Adult bees at which laying is half of the most, 1 to 1e5.</summary>
    public required double HalfLayingBees { get; init; }

    /// <summary>Standard deviation of the log of reproduction from week to week, 0 to 1.</summary>
    public required double WeeklySpread { get; init; }

    /// <summary>How much of a week's deviation stays the next week, 0 to below 1.</summary>
    public required double WeeklyMemory { get; init; }

    /// <summary>Standard deviation of the log of a control's kill rate from week to week, 0 to 2.</summary>
    public required double ControlWeeklySpread { get; init; }

    /// <summary>Standard deviation of the log of the bees on the combs about the colony's own course, from week to week, 0 to 1.</summary>
    public required double BeesWeeklySpread { get; init; }

    /// <summary>Day of a northern year on which the late inflow of mites starts, 1 to 365.</summary>
    public required double LateInflowStart { get; init; }

    /// <summary>Day of a northern year on which it ends, after the start, to 365.</summary>
    public required double LateInflowEnd { get; init; }

    /// <summary>Throws when a figure is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Names the figure and its range.</exception>
    public MiteBiology Checked()
    {
        Check(WorkerOffspring, 0d, 5d, nameof(WorkerOffspring));
        Check(DroneOffspring, 0d, 5d, nameof(DroneOffspring));
        Check(MotherReturn, 0d, 1d, nameof(MotherReturn));
        Check(EmergenceLoss, 0d, 1d, nameof(EmergenceLoss));
        Check(WorkerCrowding, 0d, 2d, nameof(WorkerCrowding));
        Check(DroneCrowding, 0d, 2d, nameof(DroneCrowding));
        Check(InvasionScale, 0d, 2d, nameof(InvasionScale));
        Check(WorkerInvasion, 0d, 10d, nameof(WorkerInvasion));
        Check(DroneInvasion, 0d, 100d, nameof(DroneInvasion));
        Check(BeeGrams, 0.05, 0.3, nameof(BeeGrams));
        Check(DeathWithBrood, 0d, 0.1, nameof(DeathWithBrood));
        Check(DeathBroodless, 0d, 0.1, nameof(DeathBroodless));
        Check(LoadHazard, 0d, 1d, nameof(LoadHazard));
        Check(InfestedLoss, 0d, 1d, nameof(InfestedLoss));
        Check(HalfLayingBees, 1d, 1e5, nameof(HalfLayingBees));
        Check(WeeklySpread, 0d, 1d, nameof(WeeklySpread));
        Check(WeeklyMemory, 0d, 0.999, nameof(WeeklyMemory));
        Check(ControlWeeklySpread, 0d, 2d, nameof(ControlWeeklySpread));
        Check(BeesWeeklySpread, 0d, 1d, nameof(BeesWeeklySpread));
        Check(LateInflowStart, 1d, 365d, nameof(LateInflowStart));
        Check(LateInflowEnd, LateInflowStart, 365d, nameof(LateInflowEnd));
        return this;
    }

    private static void Check(double value, double low, double high, string name)
    {
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(name, value, $"This figure of mite biology lies between {low} and {high}.");
    }
}
