namespace Foundress.Science.Dynamics;

/// <summary>Mites that leave with bees or combs on one day: a swarm, a split, drone comb cut out.</summary>
/// <param name="Day">The day, counted from the first day of the course.</param>
/// <param name="OnAdults">Share of the mites on adult bees that leave, 0 to 1: the share of the bees that go.</param>
/// <param name="InWorkerCells">Share of the mites in sealed worker cells that leave, 0 to 1.</param>
/// <param name="InDroneCells">Share of the mites in sealed drone cells that leave, 0 to 1.</param>
public readonly record struct MitesTaken(int Day, double OnAdults, double InWorkerCells, double InDroneCells)
{
    /// <summary>Throws when a value is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Names the value.</exception>
    public MitesTaken Checked()
    {
        Check(OnAdults, nameof(OnAdults));
        Check(InWorkerCells, nameof(InWorkerCells));
        Check(InDroneCells, nameof(InDroneCells));
        return this;
    }

    private static void Check(double share, string name)
    {
        if (share is not (>= 0d and <= 1d))
            throw new ArgumentOutOfRangeException(name, share, "A share of the mites lies from 0 to 1.");
    }
}
