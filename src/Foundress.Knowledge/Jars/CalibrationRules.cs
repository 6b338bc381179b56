using Foundress.Science.Estimation;

namespace Foundress.Knowledge;

/// <summary>How much what a measure is said to hold weighs against the keeper's own counted jars.</summary>
/// <param name="JarsForMean">Counted jars that the said number is worth, above 0.</param>
/// <param name="JarsForSpread">Counted jars that the said spread is worth, above 2.</param>
/// <param name="JarsEnough">From so many counted jars on, an uncounted jar is taken as the keeper's own.</param>
public sealed record CalibrationRules(Figure JarsForMean, Figure JarsForSpread, Figure JarsEnough)
{
    /// <summary>What is believed of a measure before any jar is counted.</summary>
    /// <param name="bees">Bees it is said to hold, at least 1.</param>
    /// <param name="logSpread">Spread of that number as standard deviation of its natural logarithm, above 0 and at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public JarPrior PriorOf(double bees, double logSpread) => new(bees, logSpread, JarsForMean.Value, JarsForSpread.Value);
}
