namespace Foundress.Science.Estimation;

/// <summary>What one jar says: mites counted, bees they were counted on, and the share of mites the method gets off the bees.</summary>
public readonly record struct JarCount
{
    /// <summary>A jar's count.</summary>
    /// <param name="mites">Mites counted over all passes, 0 or more.</param>
    /// <param name="bees">The bees in the jar.</param>
    /// <param name="recovery">Share of the mites that the method gets off the bees, above 0 and at most 1; 1 keeps the level on the method's own scale.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public JarCount(int mites, BeeCount bees, double recovery = 1d)
    {
        if (mites < 0)
            throw new ArgumentOutOfRangeException(nameof(mites), mites, "The number of mites counted is 0 or more.");
        if (!(bees.Bees >= 1d))
            throw new ArgumentOutOfRangeException(nameof(bees), bees, "A jar holds at least one bee.");
        if (recovery is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(recovery), recovery, "A recovery is a share above 0 and at most 1, for example 0.9.");
        (Mites, Bees, Recovery) = (mites, bees, recovery);
    }

    /// <summary>Mites counted over all passes.</summary>
    public int Mites { get; }

    /// <summary>The bees in the jar.</summary>
    public BeeCount Bees { get; }

    /// <summary>Share of the mites that the method gets off the bees.</summary>
    public double Recovery { get; }

    /// <summary>Median number of bees times recovery: the mites one expects to count for each mite per bee.</summary>
    internal double Exposure => Bees.Bees * Recovery;
}
