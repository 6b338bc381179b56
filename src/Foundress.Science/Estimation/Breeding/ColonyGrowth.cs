namespace Foundress.Science.Estimation;

/// <summary>The growth of one colony beside the others of a ranking, in growth of the natural logarithm of the level per day.</summary>
public sealed class ColonyGrowth
{
    private readonly double _start;
    private readonly double _step;
    private readonly double[] _density;

    internal ColonyGrowth(string colony, double start, double step, double[] density, Chance bestFifth, bool fromJars)
    {
        (Colony, _start, _step, _density, ChanceInBestFifth, FromJars) = (colony, start, step, density, bestFifth, fromJars);
        for (int i = 0; i < density.Length; i++)
            Mean += density[i] * (start + (i * step));
        double variance = 0d;
        for (int i = 0; i < density.Length; i++)
            variance += density[i] * (start + (i * step) - Mean) * (start + (i * step) - Mean);
        StandardDeviation = Math.Sqrt(variance);
    }

    /// <summary>Name of the colony.</summary>
    public string Colony { get; }

    /// <summary>Mean growth per day, drawn towards the other colonies as far as its own jars leave it open.</summary>
    public double Mean { get; }

    /// <summary>Standard deviation of the growth per day around <see cref="Mean"/>.</summary>
    public double StandardDeviation { get; }

    /// <summary>The chance that its true growth is among the slowest fifth of the colonies ranked.</summary>
    public Chance ChanceInBestFifth { get; }

    /// <summary>False when its own jars say nothing about growth (no stretch with two visits and a mite): then it is placed by the others alone.</summary>
    public bool FromJars { get; }

    /// <summary>The equal-tailed interval.</summary>
    /// <param name="confidence">Above 0 and below 1, for example 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public ChangeInterval Interval(double confidence)
    {
        double tail = CountIntervals.Tail(confidence);
        return new(Quantile(tail), Quantile(1d - tail), confidence);
    }

    // Each node stands for the step around it.
    private double Quantile(double p)
    {
        double sum = 0d;
        for (int i = 0; i < _density.Length; i++)
        {
            if (sum + _density[i] >= p)
                return _start + ((i - 0.5 + ((p - sum) / _density[i])) * _step);
            sum += _density[i];
        }

        return _start + ((_density.Length - 0.5) * _step);
    }
}
