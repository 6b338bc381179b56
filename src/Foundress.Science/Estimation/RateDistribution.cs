namespace Foundress.Science.Estimation;

/// <summary>The distribution of a rate (mites per bee) given counts. Immutable.</summary>
internal abstract class RateDistribution
{
    /// <summary>The mean.</summary>
    public abstract double Mean { get; }

    /// <summary>The chance of a rate over a value of 0 or more.</summary>
    public abstract double Upper(double rate);

    /// <summary>The rate with a given chance below it, above 0 and below 1.</summary>
    public abstract double Quantile(double p);
}
