using Foundress.Science.Numerics;

namespace Foundress.Science.Sampling;

/// <summary>How many bees it takes to find mites at all, and how often a jar finds none although there are some.</summary>
/// <remarks>
/// Each bee is taken to carry a mite with the same chance, as in freedom-from-disease sampling (binomial: 1 - (1 - p·r)^n);
/// sensible at low levels, where few bees carry two mites.
/// </remarks>
public static class JarDetection
{
    /// <summary>The chance that a jar finds no mite.</summary>
    /// <param name="level">The true level, at most 100 per 100 bees.</param>
    /// <param name="bees">Bees in the jar, 1 or more.</param>
    /// <param name="recovery">Share of the mites that the method gets off the bees, above 0 and at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static Chance ChanceOfNone(MiteLevel level, int bees, double recovery = 1d)
    {
        if (bees < 1)
            throw new ArgumentOutOfRangeException(nameof(bees), bees, "A jar holds at least one bee.");
        double found = Found(level, recovery);
        return Chance.Of(found == 1d ? 0d : Math.Exp(bees * ElementaryFunctions.Log1P(-found)));
    }

    /// <summary>The fewest bees that find at least one mite with a given chance.</summary>
    /// <param name="level">The true level, above 0 and at most 100 per 100 bees.</param>
    /// <param name="chance">The wanted chance, below 1.</param>
    /// <param name="recovery">Share of the mites that the method gets off the bees, above 0 and at most 1.</param>
    /// <returns>At least 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range, or more than two thousand million bees would be needed.</exception>
    public static int BeesFor(MiteLevel level, Chance chance, double recovery = 1d)
    {
        double found = Found(level, recovery);
        if (chance.Value >= 1d)
            throw new ArgumentOutOfRangeException(nameof(chance), chance, "No number of bees makes finding a mite certain: ask for a chance below 1, for example 0.95.");
        double bees = found == 1d ? 1d : Math.Max(1d, Math.Ceiling(ElementaryFunctions.Log1P(-chance.Value) / ElementaryFunctions.Log1P(-found)));
        return bees <= int.MaxValue
            ? (int)bees
            : throw new ArgumentOutOfRangeException(nameof(level), level, "At so low a level no jar finds a mite with that chance: give a level above 0.");
    }

    private static double Found(MiteLevel level, double recovery)
    {
        if (recovery is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(recovery), recovery, "A recovery is a share above 0 and at most 1, for example 0.9.");
        if (level.PerBee > 1d)
            throw new ArgumentOutOfRangeException(nameof(level), level, "Detection is reckoned for at most 100 mites per 100 bees.");
        return level.PerBee * recovery;
    }
}
