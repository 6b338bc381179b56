namespace Foundress.Science.Estimation;

/// <summary>The most likely mean level and spread of an apiary's colonies.</summary>
/// <param name="Mean">The mean level.</param>
/// <param name="Spread">Standard deviation of the colonies' levels over their mean; at <see cref="SmallestSpread"/> the colonies are no more unequal than chance makes them.</param>
/// <param name="LogLikelihood">ln likelihood there.</param>
public readonly record struct ClumpedFit(MiteLevel Mean, double Spread, double LogLikelihood)
{
    /// <summary>The smallest spread looked at, k of a million; a fit at it means that the likelihood keeps rising towards equal colonies.</summary>
    public const double SmallestSpread = 0.001;

    /// <summary>The shape k of the gamma distribution of the colonies' levels.</summary>
    public double Shape => 1d / (Spread * Spread);

    /// <summary>True when the colonies differ no more than chance makes jars differ.</summary>
    public bool IsEqualColonies => Spread < 1.5 * SmallestSpread;
}
