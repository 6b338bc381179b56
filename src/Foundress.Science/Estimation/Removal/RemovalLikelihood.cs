using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>Profile likelihood of the number of mites given repeat passes (Moran 1951), over real numbers of mites.</summary>
internal sealed class RemovalLikelihood(PassCounts counts)
{
    private const int MostSteps = 200;

    private readonly double _summed = counts.Summed;

    private readonly double _passes = counts.Passes;

    private readonly double _earlier = counts.Earlier;

    /// <summary>ln likelihood at its best chance of catching, without the coefficient that depends on the counts alone.</summary>
    public double Log(double mites)
    {
        double trials = (_passes * mites) - _earlier;
        double missed = trials - _summed;
        double ways = GammaFunctions.LogGamma(mites + 1d) - GammaFunctions.LogGamma(mites - _summed + 1d) - GammaFunctions.LogGamma(_summed + 1d);
        double chances = _summed * Math.Log(_summed / trials);
        return ways + chances + (missed > 0d ? missed * ElementaryFunctions.Log1P(-_summed / trials) : 0d);
    }

    /// <summary>The real number of mites with the greatest likelihood; the counts must decline.</summary>
    public double Peak()
    {
        if (Slope(_summed) <= 0d)
            return _summed;
        double low = _summed;
        double high = (2d * _summed) + 1d;
        while (Slope(high) > 0d)
            (low, high) = (high, 2d * high);
        return Bisect(low, high, mites => Slope(mites) > 0d);
    }

    public RemovalInterval Interval(double confidence)
    {
        double z = NormalDistribution.Quantile(CountIntervals.Tail(confidence));
        double peak = Peak();
        double cut = Log(peak) - (0.5 * z * z);
        double lower = Log(_summed) >= cut ? _summed : Bisect(_summed, peak, mites => Log(mites) < cut);
        if (Endless() >= cut)
            return new(lower, null, confidence);
        double high = 2d * (peak + 1d);
        while (Log(high) > cut)
            high *= 2d;
        return new(lower, Bisect(peak, high, mites => Log(mites) > cut), confidence);
    }

    // What ln likelihood tends to when the mites are without number and the chance of catching one tends to 0.
    private double Endless() => (_summed * (Math.Log(_summed / _passes) - 1d)) - GammaFunctions.LogGamma(_summed + 1d);

    // The harmonic sum is the derivative of ln of the binomial coefficient; summed term by term it keeps its digits where two
    // digamma values would cancel.
    private double Slope(double mites)
    {
        double sum = 0d;
        for (double j = 0d; j < _summed; j++)
            sum += 1d / (mites - j);
        double share = _summed / ((_passes * mites) - _earlier);
        return share >= 1d ? double.NegativeInfinity : sum + (_passes * ElementaryFunctions.Log1P(-share));
    }

    private static double Bisect(double low, double high, Func<double, bool> isLow)
    {
        for (int step = 0; step < MostSteps && high - low > 1e-11 * high; step++)
        {
            double middle = 0.5 * (low + high);
            if (isLow(middle))
                low = middle;
            else
                high = middle;
        }

        return 0.5 * (low + high);
    }
}
