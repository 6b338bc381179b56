namespace Foundress.Science.Verifying;

/// <summary>The distribution of the share of the mites that is left: level after over level before (or over what it would have been).</summary>
internal interface IRatioLaw
{
    /// <summary>The ratio with a chance of being lower, between 0 and 1.</summary>
    double Quantile(double p);

    /// <summary>The chance of a ratio below a value above 0.</summary>
    double Below(double ratio);
}
