namespace Foundress.Science.Estimation;

/// <summary>A jar whose bees were counted to learn what a jar holds.</summary>
public readonly record struct CountedJar
{
    /// <summary>A counted jar.</summary>
    /// <param name="observer">Who filled it.</param>
    /// <param name="scoop">The measure it was filled with.</param>
    /// <param name="bees">Bees counted, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bees"/> is below 1.</exception>
    public CountedJar(string observer, string scoop, int bees)
    {
        ArgumentNullException.ThrowIfNull(observer);
        ArgumentNullException.ThrowIfNull(scoop);
        if (bees < 1)
            throw new ArgumentOutOfRangeException(nameof(bees), bees, "A counted jar holds at least one bee.");
        (Observer, Scoop, Bees) = (observer, scoop, bees);
    }

    /// <summary>Who filled it.</summary>
    public string Observer { get; }

    /// <summary>The measure it was filled with.</summary>
    public string Scoop { get; }

    /// <summary>Bees counted.</summary>
    public int Bees { get; }
}
