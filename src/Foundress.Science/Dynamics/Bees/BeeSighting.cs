namespace Foundress.Science.Dynamics.Bees;

/// <summary>What an inspection told of a colony's size. Either number may be missing.</summary>
public readonly record struct BeeSighting
{
    /// <summary>An inspection.</summary>
    /// <param name="on">The day.</param>
    /// <param name="adults">Adult bees as estimated, 0 to 1,000,000; null when not looked at.</param>
    /// <param name="adultLogSpread">Standard deviation of the natural logarithm of that estimate, 0.01 to 2.</param>
    /// <param name="brood">Cells with brood of every age as estimated, 0 to 1,000,000; null when not looked at.</param>
    /// <param name="broodLogSpread">The same for brood.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public BeeSighting(DateOnly on, double? adults, double adultLogSpread, double? brood, double broodLogSpread)
    {
        if (adults is { } bees && bees is not (>= 0 and <= 1e6))
            throw new ArgumentOutOfRangeException(nameof(adults), bees, "A colony has 0 to 1,000,000 bees.");
        if (brood is { } cells && cells is not (>= 0 and <= 1e6))
            throw new ArgumentOutOfRangeException(nameof(brood), cells, "A colony has 0 to 1,000,000 cells of brood.");
        if (adultLogSpread is not (>= 0.01 and <= 2))
            throw new ArgumentOutOfRangeException(nameof(adultLogSpread), adultLogSpread, "The log spread of an estimate lies between 0.01 and 2.");
        if (broodLogSpread is not (>= 0.01 and <= 2))
            throw new ArgumentOutOfRangeException(nameof(broodLogSpread), broodLogSpread, "The log spread of an estimate lies between 0.01 and 2.");
        (On, Adults, AdultLogSpread, Brood, BroodLogSpread) = (on, adults, adultLogSpread, brood, broodLogSpread);
    }

    /// <summary>The day.</summary>
    public DateOnly On { get; }

    /// <summary>Adult bees as estimated; null when not looked at.</summary>
    public double? Adults { get; }

    /// <summary>Standard deviation of the natural logarithm of that estimate.</summary>
    public double AdultLogSpread { get; }

    /// <summary>Cells with brood of every age as estimated; null when not looked at.</summary>
    public double? Brood { get; }

    /// <summary>Standard deviation of the natural logarithm of that estimate.</summary>
    public double BroodLogSpread { get; }
}
