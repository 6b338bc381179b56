namespace Foundress.Science.Dynamics;

/// <summary>The bees of one colony day by day, as they would be were the colony free of mites: the ground the mites live on.</summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
public sealed class BeeCourse
{
    private readonly float[] _adults;
    private readonly float[] _workerSealed;
    private readonly float[] _droneSealed;

    /// <summary>A course from its daily numbers.</summary>
    /// <param name="firstDay">The first day.</param>
    /// <param name="adults">Adult bees in the colony on each day, 0 to 1e6.</param>
    /// <param name="workerSealed">Worker cells sealed on each day, 0 to 1e5.</param>
    /// <param name="droneSealed">Drone cells sealed on each day, 0 to 1e5.</param>
    /// <param name="adultLogSpread">Standard deviation of the natural logarithm of the adult bees, 0 to 2.</param>
    /// <param name="broodLogSpread">Standard deviation of the natural logarithm of the cells, 0 to 2.</param>
    /// <exception cref="ArgumentException">The courses are empty or of unequal length, or a value is out of its range.</exception>
    public BeeCourse(
        DateOnly firstDay, ReadOnlySpan<float> adults, ReadOnlySpan<float> workerSealed, ReadOnlySpan<float> droneSealed, double adultLogSpread, double broodLogSpread)
    {
        if (adults.Length == 0 || adults.Length != workerSealed.Length || adults.Length != droneSealed.Length)
            throw new ArgumentException($"A course needs the same number of days for adults ({adults.Length}), worker cells ({workerSealed.Length}) and drone cells ({droneSealed.Length}), at least one.", nameof(adults));
        Check(adults, 1e6f, nameof(adults));
        Check(workerSealed, 1e5f, nameof(workerSealed));
        Check(droneSealed, 1e5f, nameof(droneSealed));
        FirstDay = firstDay;
        _adults = adults.ToArray();
        _workerSealed = workerSealed.ToArray();
        _droneSealed = droneSealed.ToArray();
        AdultLogSpread = Spread(adultLogSpread, nameof(adultLogSpread));
        BroodLogSpread = Spread(broodLogSpread, nameof(broodLogSpread));
    }

    /// <summary>The first day.</summary>
    public DateOnly FirstDay { get; }

    /// <summary>The number of days.</summary>
    public int Days => _adults.Length;

    /// <summary>Adult bees in the colony on each day.</summary>
    public ReadOnlySpan<float> Adults => _adults;

    /// <summary>Worker cells that become fit for mites and are sealed on each day.</summary>
    public ReadOnlySpan<float> WorkerSealed => _workerSealed;

    /// <summary>Drone cells that become fit for mites and are sealed on each day.</summary>
    public ReadOnlySpan<float> DroneSealed => _droneSealed;

    /// <summary>Standard deviation of the natural logarithm of <see cref="Adults"/>, for the course as a whole.</summary>
    public double AdultLogSpread { get; }

    /// <summary>Standard deviation of the natural logarithm of the cells, for the course as a whole.</summary>
    public double BroodLogSpread { get; }

    private static void Check(ReadOnlySpan<float> values, float most, string name)
    {
        for (int day = 0; day < values.Length; day++)
        {
            if (!(values[day] >= 0f && values[day] <= most))
                throw new ArgumentException($"{name}[{day}] is {values[day]}: a number from 0 to {most} is needed.", name);
        }
    }

    private static double Spread(double value, string name) =>
        value is >= 0d and <= 2d ? value : throw new ArgumentException($"{name} is {value}: a log spread from 0 to 2 is needed.", name);
}
