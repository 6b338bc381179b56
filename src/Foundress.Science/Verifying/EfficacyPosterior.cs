using Foundress.Science.Estimation;

namespace Foundress.Science.Verifying;

/// <summary>What the jars say of the share of the mites that a control took away. Shares: 0.95 is 95 %; below 0 when mites grew in number. Immutable.</summary>
public sealed class EfficacyPosterior
{
    private readonly IRatioLaw _left;

    internal EfficacyPosterior(IRatioLaw left) => _left = left;

    /// <summary>The efficacy that is as likely too high as too low.</summary>
    public double Median => 1d - _left.Quantile(0.5);

    /// <summary>The share with a given chance of being lower.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public double Quantile(double p) => p is > 0d and < 1d
        ? 1d - _left.Quantile(1d - p)
        : throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile is asked for a chance above 0 and below 1.");

    /// <summary>The equal-tailed interval.</summary>
    /// <param name="confidence">Above 0 and below 1, for example 0.9.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public EfficacyInterval Interval(double confidence)
    {
        double tail = CountIntervals.Tail(confidence);
        return new(Quantile(tail), Quantile(1d - tail), confidence);
    }

    /// <summary>The chance that at least a share was taken away.</summary>
    /// <param name="share">Below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is not a finite number below 1.</exception>
    public Chance ChanceAtLeast(double share) => share < 1d && double.IsFinite(share)
        ? Chance.Of(Math.Clamp(_left.Below(1d - share), 0d, 1d))
        : throw new ArgumentOutOfRangeException(nameof(share), share, "A share to reach is a finite number below 1.");
}
