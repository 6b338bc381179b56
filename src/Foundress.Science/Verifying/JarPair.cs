using Foundress.Science.Estimation;

namespace Foundress.Science.Verifying;

/// <summary>The jars of one colony before and after a control, all by one counting method.</summary>
public sealed class JarPair
{
    /// <summary>A colony's jars.</summary>
    /// <param name="before">At least one jar taken before the control.</param>
    /// <param name="after">At least one jar taken after it.</param>
    /// <exception cref="ArgumentException">There is no jar on one side.</exception>
    public JarPair(IReadOnlyList<JarCount> before, IReadOnlyList<JarCount> after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (before.Count == 0)
            throw new ArgumentException("A pair needs at least one jar from before the control.", nameof(before));
        if (after.Count == 0)
            throw new ArgumentException("A pair needs at least one jar from after the control.", nameof(after));
        (Before, After) = (before, after);
        var (earlier, later) = (PooledExposure.Of(before), PooledExposure.Of(after));
        (MitesBefore, MitesAfter) = (earlier.Mites, later.Mites);
        (ExposureBefore, ExposureAfter) = (earlier.Median, later.Median);
        LogSpread = Math.Sqrt((earlier.LogSpread * earlier.LogSpread) + (later.LogSpread * later.LogSpread));
    }

    /// <summary>The jars before.</summary>
    public IReadOnlyList<JarCount> Before { get; }

    /// <summary>The jars after.</summary>
    public IReadOnlyList<JarCount> After { get; }

    /// <summary>Mites counted before, over all jars.</summary>
    public int MitesBefore { get; }

    /// <summary>Mites counted after, over all jars.</summary>
    public int MitesAfter { get; }

    /// <summary>Bees times recovery before.</summary>
    internal double ExposureBefore { get; }

    /// <summary>Bees times recovery after.</summary>
    internal double ExposureAfter { get; }

    /// <summary>Standard deviation of the logarithm of the ratio of the two exposures.</summary>
    internal double LogSpread { get; }

    /// <summary>What the counts come to.</summary>
    internal PairCounts Counts => new(MitesBefore, MitesAfter, ExposureBefore, ExposureAfter, LogSpread);
}
