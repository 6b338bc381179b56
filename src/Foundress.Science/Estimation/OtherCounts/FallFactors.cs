namespace Foundress.Science.Estimation;

/// <summary>The lowest and highest published number of mites in a colony for each mite that falls in a day, for one season. Data with a source.</summary>
public sealed record FallFactors
{
    /// <summary>Factors.</summary>
    /// <param name="lowest">The lowest, above 0.</param>
    /// <param name="highest">The highest, at least <paramref name="lowest"/>.</param>
    /// <param name="source">Where they are published.</param>
    /// <exception cref="ArgumentOutOfRangeException">A factor is out of its range.</exception>
    /// <exception cref="ArgumentException">There is no source.</exception>
    public FallFactors(double lowest, double highest, string source)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(source);
        if (!(lowest > 0d) || !double.IsFinite(lowest))
            throw new ArgumentOutOfRangeException(nameof(lowest), lowest, "A fall factor is a finite number above 0.");
        if (!(highest >= lowest) || !double.IsFinite(highest))
            throw new ArgumentOutOfRangeException(nameof(highest), highest, $"The highest fall factor is a finite number of at least the lowest, {lowest}.");
        (Lowest, Highest, Source) = (lowest, highest, source);
    }

    /// <summary>The lowest.</summary>
    public double Lowest { get; }

    /// <summary>The highest.</summary>
    public double Highest { get; }

    /// <summary>Where they are published.</summary>
    public string Source { get; }
}
