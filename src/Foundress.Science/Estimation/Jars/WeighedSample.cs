namespace Foundress.Science.Estimation;

/// <summary>Bees that were both counted and weighed, to learn what a bee weighs that day.</summary>
public readonly record struct WeighedSample
{
    /// <summary>A counted and weighed sub-sample.</summary>
    /// <param name="bees">Bees counted, at least 2.</param>
    /// <param name="grams">Their weight in grams, above 0.</param>
    /// <param name="fromJar">True when they are part of the jar weighed, false when they are other bees of the same place and day.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public WeighedSample(int bees, double grams, bool fromJar)
    {
        if (bees < 2)
            throw new ArgumentOutOfRangeException(nameof(bees), bees, "A weighed sub-sample holds at least two counted bees; a hundred is a good number.");
        if (!(grams > 0d) || !double.IsFinite(grams))
            throw new ArgumentOutOfRangeException(nameof(grams), grams, "The weight of the sub-sample is in grams and above 0.");
        (Bees, Grams, FromJar) = (bees, grams, fromJar);
    }

    /// <summary>Bees counted.</summary>
    public int Bees { get; }

    /// <summary>Their weight in grams.</summary>
    public double Grams { get; }

    /// <summary>True when they are part of the jar weighed.</summary>
    public bool FromJar { get; }

    /// <summary>Grams of one bee, on average.</summary>
    public double GramsPerBee => Grams / Bees;
}
