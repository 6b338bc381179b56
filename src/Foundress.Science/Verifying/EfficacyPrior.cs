namespace Foundress.Science.Verifying;

/// <summary>What is taken as known of an efficacy before any jar: modelling choices, see docs/methods/efficacy.md.</summary>
/// <param name="SpreadScale">
/// Scale of the half-normal prior of the spread between colonies (standard deviation over mean of the share of mites that is
/// left), above 0 and at most 3; 0 for colonies that are all alike.
/// </param>
public readonly record struct EfficacyPrior(double SpreadScale)
{
    /// <summary>The prior used unless another is given.</summary>
    public static EfficacyPrior Default { get; } = new(0.7);

    /// <summary>All colonies lose the same share.</summary>
    public static EfficacyPrior Alike { get; } = new(0d);
}
