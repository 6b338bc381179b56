namespace Foundress.Science.Estimation;

/// <summary>What is believed about a jar before any is counted, and how many counted jars that belief is worth. The figures are data.</summary>
/// <remarks>Normal-inverse-gamma on ln bees: docs/methods/calibration.md.</remarks>
public sealed record JarPrior
{
    /// <summary>A prior.</summary>
    /// <param name="bees">Bees a jar usually holds, at least 1.</param>
    /// <param name="logSpread">Usual spread between jars, as standard deviation of ln bees, above 0 and at most 1.</param>
    /// <param name="jarsForMean">Counted jars that the belief in the mean is worth, above 0; at 1 the first counted jar weighs as much.</param>
    /// <param name="jarsForSpread">Counted jars that the belief in the spread is worth, above 2: with fewer the next jar has no finite spread.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public JarPrior(double bees, double logSpread, double jarsForMean, double jarsForSpread)
    {
        if (!double.IsFinite(bees) || bees < 1d)
            throw new ArgumentOutOfRangeException(nameof(bees), bees, "A jar holds at least one bee.");
        if (logSpread is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(logSpread), logSpread, "The usual log spread of a jar lies above 0 and at most 1, for example 0.15.");
        if (!(jarsForMean > 0d) || !double.IsFinite(jarsForMean))
            throw new ArgumentOutOfRangeException(nameof(jarsForMean), jarsForMean, "The belief in the mean is worth a number of jars above 0.");
        if (!(jarsForSpread > 2d) || !double.IsFinite(jarsForSpread))
            throw new ArgumentOutOfRangeException(nameof(jarsForSpread), jarsForSpread, "The belief in the spread is worth more than 2 jars.");
        (Bees, LogSpread, JarsForMean, JarsForSpread) = (bees, logSpread, jarsForMean, jarsForSpread);
    }

    /// <summary>Bees a jar usually holds.</summary>
    public double Bees { get; }

    /// <summary>Usual spread between jars, as standard deviation of ln bees.</summary>
    public double LogSpread { get; }

    /// <summary>Counted jars that the belief in the mean is worth.</summary>
    public double JarsForMean { get; }

    /// <summary>Counted jars that the belief in the spread is worth.</summary>
    public double JarsForSpread { get; }
}
