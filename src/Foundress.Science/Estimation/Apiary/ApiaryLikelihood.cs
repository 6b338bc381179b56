using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// The likelihood of an apiary's mean level and spread: each colony's mites are negative binomial, averaged over its
/// exposure where that is uncertain. Work arrays are kept for one spread at a time; not for concurrent use.
/// </summary>
internal sealed class ApiaryLikelihood
{
    private const double Reach = 4.6;
    private const double Step = 1.25;

    // Gauss-Hermite rules for the standard normal weight (Abramowitz & Stegun 1964, table 25.10, rescaled): for a likelihood
    // that hardly changes with the exposure a few nodes do.
    private static readonly double[] FiveNodes = [-2.8569700138728056, -1.3556261799742659, 0d, 1.3556261799742659, 2.8569700138728056];
    private static readonly double[] FiveWeights = [0.011257411327720689, 0.22207592200561264, 0.53333333333333333, 0.22207592200561264, 0.011257411327720689];
    private static readonly double[] SevenNodes =
        [-3.7504397177257423, -2.3667594107345413, -1.1544053947399682, 0d, 1.1544053947399682, 2.3667594107345413, 3.7504397177257423];
    private static readonly double[] SevenWeights =
    [
        0.00054826885597221778, 0.030757123967586497, 0.24012317860501271, 0.45714285714285714, 0.24012317860501271, 0.030757123967586497,
        0.00054826885597221778,
    ];

    private readonly PooledExposure[] _colonies;
    private readonly double[] _logFactorial;
    private readonly double[] _constant;
    private readonly double[][] _scale;
    private readonly double[][] _logWeight;
    private readonly double[] _work;
    private double _k;

    public ApiaryLikelihood(PooledExposure[] colonies)
    {
        _colonies = colonies;
        _logFactorial = new double[colonies.Length];
        _constant = new double[colonies.Length];
        _scale = new double[colonies.Length][];
        _logWeight = new double[colonies.Length][];
        int most = 1;
        for (int i = 0; i < colonies.Length; i++)
        {
            _logFactorial[i] = GammaFunctions.LogGamma(colonies[i].Mites + 1d);
            most = Math.Max(most, NodeCount(Sharpness(colonies[i], 0d)));
        }

        _work = new double[most];
    }

    /// <summary>Number of colonies.</summary>
    public int Count => _colonies.Length;

    /// <summary>Prepares for a spread between colonies (1/√k), above 0.</summary>
    public void SetSpread(double spread)
    {
        _k = 1d / (spread * spread);
        double logK = Math.Log(_k);
        double logGammaK = GammaFunctions.LogGamma(_k);
        for (int i = 0; i < _colonies.Length; i++)
        {
            PooledExposure colony = _colonies[i];
            _constant[i] = GammaFunctions.LogGamma(colony.Mites + _k) - logGammaK - _logFactorial[i]
                + (colony.Mites * (Math.Log(colony.Median) - logK));
            if (colony.LogSpread > 0d)
                SetExposures(i, Sharpness(colony, spread));
        }
    }

    /// <summary>ln likelihood at the natural logarithm of the mean level per bee, for the spread last set.</summary>
    public double Log(double logMean)
    {
        double ratio = Math.Exp(logMean) / _k;
        double sum = 0d;
        for (int i = 0; i < _colonies.Length; i++)
        {
            ref readonly PooledExposure colony = ref _colonies[i];
            double own = _constant[i] + (colony.Mites * logMean);
            if (colony.LogSpread == 0d)
                sum += own - ((colony.Mites + _k) * Math.Log(1d + (colony.Median * ratio)));
            else
                sum += own + LogAverage(i, ratio);
        }

        return sum;
    }

    /// <summary>The same, and for each colony the mean and variance of its level given mean, spread and its own jars.</summary>
    public double Log(double logMean, Span<double> means, Span<double> variances)
    {
        double mean = Math.Exp(logMean);
        double ratio = mean / _k;
        double sum = 0d;
        for (int i = 0; i < _colonies.Length; i++)
        {
            ref readonly PooledExposure colony = ref _colonies[i];
            double shape = colony.Mites + _k;
            double own = _constant[i] + (colony.Mites * logMean);
            if (colony.LogSpread == 0d)
            {
                // shape / (exposure + k/mean), written so that nothing overflows for a mean near 0.
                double grown = 1d + (colony.Median * ratio);
                sum += own - (shape * Math.Log(grown));
                means[i] = shape * ratio / grown;
                variances[i] = means[i] * ratio / grown;
                continue;
            }

            sum += own + LogAverage(i, ratio);
            double first = 0d;
            double second = 0d;
            double weights = 0d;
            for (int q = 0; q < _scale[i].Length; q++)
            {
                double scale = ratio / (1d + (_scale[i][q] * ratio));
                weights += _work[q];
                first += _work[q] * scale;
                second += _work[q] * scale * scale;
            }

            first /= weights;
            second /= weights;
            means[i] = shape * first;
            variances[i] = (shape * second) + (shape * shape * Math.Max(0d, second - (first * first)));
        }

        return sum;
    }

    // ln of the average over the exposure; leaves the terms, up to a factor, in the work array.
    private double LogAverage(int i, double ratio)
    {
        double[] scale = _scale[i];
        double[] logWeight = _logWeight[i];
        double shape = _colonies[i].Mites + _k;
        double most = double.NegativeInfinity;
        for (int q = 0; q < scale.Length; q++)
        {
            double term = logWeight[q] - (shape * Math.Log(1d + (scale[q] * ratio)));
            _work[q] = term;
            most = Math.Max(most, term);
        }

        double sum = 0d;
        for (int q = 0; q < scale.Length; q++)
            sum += _work[q] = Math.Exp(_work[q] - most);
        return most + Math.Log(sum);
    }

    // How fast the likelihood of a colony changes with its exposure, in standard deviations of the exposure.
    private static double Sharpness(PooledExposure colony, double spread) =>
        colony.LogSpread / Math.Sqrt((1d / (colony.Mites + 0.5)) + (spread * spread));

    private static int NodeCount(double sharpness) => sharpness switch
    {
        < 0.45 => FiveNodes.Length,
        < 0.75 => SevenNodes.Length,
        _ => (2 * (int)Math.Ceiling(Reach / StepOf(sharpness))) + 1,
    };

    private static double StepOf(double sharpness) => Step / Math.Sqrt(1d + (sharpness * sharpness));

    // Beyond the small rules: evenly spaced nodes, for smooth functions as good as a Gauss rule, their count set by the need.
    private void SetExposures(int i, double sharpness)
    {
        int count = NodeCount(sharpness);
        double step = StepOf(sharpness);
        if (_scale[i] is null || _scale[i].Length != count)
            (_scale[i], _logWeight[i]) = (new double[count], new double[count]);

        PooledExposure colony = _colonies[i];
        double logTotal = 0.5 * Math.Log(2d * Math.PI);
        for (int q = 0; q < count; q++)
        {
            double z = count == FiveNodes.Length ? FiveNodes[q] : count == SevenNodes.Length ? SevenNodes[q] : (q - (count / 2)) * step;
            double logWeight = count == FiveNodes.Length ? Math.Log(FiveWeights[q])
                : count == SevenNodes.Length ? Math.Log(SevenWeights[q])
                : Math.Log(step) - (0.5 * z * z) - logTotal;
            _scale[i][q] = colony.Median * Math.Exp(colony.LogSpread * z);
            _logWeight[i][q] = logWeight + (colony.Mites * colony.LogSpread * z);
        }
    }
}
