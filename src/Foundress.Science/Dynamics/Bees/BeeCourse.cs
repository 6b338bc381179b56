namespace Foundress.Science.Dynamics.Bees;

/// <summary>
/// One colony's bees and brood day by day, as they would be were it free of mites: the host on which mites are reckoned.
/// Immutable; safe for concurrent use.
/// </summary>
/// <remarks>
/// Every number is finite and at least 0. Before a colony began, and after all its bees have died, there are no bees: whoever
/// divides by them must expect that.
/// </remarks>
public sealed class BeeCourse
{
    private readonly float[] _adults;
    private readonly float[] _workerSealed;
    private readonly float[] _droneSealed;
    private readonly float[] _adultLogSpread;
    private readonly float[] _broodLogSpread;

    /// <summary>A course from its daily numbers, which are copied.</summary>
    /// <param name="firstDay">The day of the first numbers.</param>
    /// <param name="adults">Adult bees at the close of each day.</param>
    /// <param name="workerSealed">Worker cells sealed on each day.</param>
    /// <param name="droneSealed">Drone cells sealed on each day.</param>
    /// <param name="adultLogSpread">How uncertain the adult bees are: standard deviation of their natural logarithm, 0 to 3.</param>
    /// <param name="broodLogSpread">The same of both numbers of sealed cells.</param>
    /// <exception cref="ArgumentException">There is no day, the lengths differ, a number is negative or not finite, or a spread is over 3.</exception>
    public BeeCourse(
        DateOnly firstDay,
        ReadOnlySpan<float> adults,
        ReadOnlySpan<float> workerSealed,
        ReadOnlySpan<float> droneSealed,
        ReadOnlySpan<float> adultLogSpread,
        ReadOnlySpan<float> broodLogSpread)
    {
        if (adults.IsEmpty)
            throw new ArgumentException("A course has at least one day.", nameof(adults));
        if (adults.Length > DateOnly.MaxValue.DayNumber - firstDay.DayNumber + 1)
            throw new ArgumentException($"{adults.Length} days from {firstDay:yyyy-MM-dd} run past the end of the calendar.", nameof(adults));
        FirstDay = firstDay;
        _adults = Checked(adults, adults.Length, float.MaxValue, nameof(adults));
        _workerSealed = Checked(workerSealed, adults.Length, float.MaxValue, nameof(workerSealed));
        _droneSealed = Checked(droneSealed, adults.Length, float.MaxValue, nameof(droneSealed));
        _adultLogSpread = Checked(adultLogSpread, adults.Length, 3f, nameof(adultLogSpread));
        _broodLogSpread = Checked(broodLogSpread, adults.Length, 3f, nameof(broodLogSpread));
    }

    /// <summary>The first day.</summary>
    public DateOnly FirstDay { get; }

    /// <summary>The last day.</summary>
    public DateOnly LastDay => FirstDay.AddDays(Days - 1);

    /// <summary>Number of days, at least 1.</summary>
    public int Days => _adults.Length;

    /// <summary>Adult bees at the close of each day.</summary>
    public ReadOnlySpan<float> Adults => _adults;

    /// <summary>Worker cells sealed on each day.</summary>
    public ReadOnlySpan<float> WorkerSealed => _workerSealed;

    /// <summary>Drone cells sealed on each day.</summary>
    public ReadOnlySpan<float> DroneSealed => _droneSealed;

    /// <summary>
    /// How uncertain <see cref="Adults"/> are on each day: standard deviation of the natural logarithm. Smallest where the
    /// colony was looked at, larger the longer ago that was.
    /// </summary>
    public ReadOnlySpan<float> AdultLogSpread => _adultLogSpread;

    /// <summary>The same of <see cref="WorkerSealed"/> and <see cref="DroneSealed"/>, which are uncertain together.</summary>
    public ReadOnlySpan<float> BroodLogSpread => _broodLogSpread;

    /// <summary>Bees and brood that left on days of the course: swarms, splits, combs cut out; by day.</summary>
    public IReadOnlyList<BeesTaken> Taken { get; internal init; } = [];

    /// <summary>The place of a day in the daily numbers.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The course does not hold that day.</exception>
    public int IndexOf(DateOnly day)
    {
        int index = day.DayNumber - FirstDay.DayNumber;
        return (uint)index < (uint)Days
            ? index
            : throw new ArgumentOutOfRangeException(nameof(day), day, $"The course runs from {FirstDay:yyyy-MM-dd} to {LastDay:yyyy-MM-dd}.");
    }

    private static float[] Checked(ReadOnlySpan<float> values, int days, float most, string name)
    {
        if (values.Length != days)
            throw new ArgumentException($"There are {values.Length} numbers for {days} days. Give one for each day.", name);
        for (int day = 0; day < days; day++)
        {
            if (!(values[day] >= 0f && values[day] <= most))
                throw new ArgumentException($"Day {day} has {values[day]}, which is not a number from 0 to {most}.", name);
        }

        return values.ToArray();
    }
}
