using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>A rate whose distribution is a weighted sum of gamma distributions.</summary>
internal sealed class GammaComponents : RateDistribution
{
    /// <summary>Number of groups that parts are kept apart in.</summary>
    public const int SpreadGroups = 10;
    private const int MeanBins = 16;

    private readonly double[] _weights;
    private readonly double[] _shapes;
    private readonly double[] _rates;

    private GammaComponents(double[] weights, double[] shapes, double[] rates)
    {
        (_weights, _shapes, _rates) = (weights, shapes, rates);
        double mean = 0d;
        for (int i = 0; i < weights.Length; i++)
            mean += weights[i] * shapes[i] / rates[i];
        Mean = mean;
    }

    /// <summary>Number of parts.</summary>
    public int Count => _weights.Length;

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <summary>
    /// The distribution that has a given mean and variance in each cell of a grid. Cells with about the same spread between
    /// colonies and about the same mean are merged into one gamma distribution with their joint mean and variance.
    /// </summary>
    public static GammaComponents FromCells(ApiaryGrid grid, ReadOnlySpan<double> means, ReadOnlySpan<double> variances)
    {
        int[] groups = new int[grid.Cells];
        for (int cell = 0; cell < groups.Length; cell++)
            groups[cell] = grid.SpreadNode(cell) * SpreadGroups / SpreadRule.Count;
        return Merge(grid.Weights, means, variances, groups, MeanBins);
    }

    /// <summary>The distribution of parts with given chances, means and variances; parts of one group with about the same mean are merged.</summary>
    public static GammaComponents Merge(ReadOnlySpan<double> chances, ReadOnlySpan<double> means, ReadOnlySpan<double> variances, ReadOnlySpan<int> groups, int bins)
    {
        double low = double.PositiveInfinity;
        double high = 0d;
        foreach (double mean in means)
            (low, high) = (Math.Min(low, mean), Math.Max(high, mean));
        double logLow = Math.Log(low);
        double perBin = bins / Math.Max(1e-12, (Math.Log(high) - logLow) * (1d + 1e-12));

        double[] weight = new double[SpreadGroups * bins];
        double[] first = new double[weight.Length];
        double[] second = new double[weight.Length];
        for (int cell = 0; cell < means.Length; cell++)
        {
            // Shared out between the two nearest bins: parts that overlap leave no gaps where the given ones are narrow.
            double place = ((Math.Log(means[cell]) - logLow) * perBin) - 0.5;
            int bin = (int)Math.Floor(place);
            double above = place - bin;
            Add(Math.Clamp(bin, 0, bins - 1), 1d - above, cell, chances, means, variances, groups);
            Add(Math.Clamp(bin + 1, 0, bins - 1), above, cell, chances, means, variances, groups);
        }

        int count = 0;
        for (int part = 0; part < weight.Length; part++)
        {
            if (weight[part] > 0d)
                count++;
        }

        double[] weights = new double[count];
        double[] shapes = new double[count];
        double[] rates = new double[count];
        count = 0;
        for (int part = 0; part < weight.Length; part++)
        {
            if (!(weight[part] > 0d))
                continue;
            double mean = first[part] / weight[part];
            double variance = Math.Max((second[part] / weight[part]) - (mean * mean), 1e-14 * mean * mean);
            weights[count] = weight[part];
            shapes[count] = mean * mean / variance;
            rates[count] = mean / variance;
            count++;
        }

        return new(weights, shapes, rates);

        void Add(int bin, double share, int cell, ReadOnlySpan<double> chances, ReadOnlySpan<double> means, ReadOnlySpan<double> variances, ReadOnlySpan<int> groups)
        {
            int part = (groups[cell] * bins) + bin;
            double chance = share * chances[cell];
            weight[part] += chance;
            first[part] += chance * means[cell];
            second[part] += chance * (variances[cell] + (means[cell] * means[cell]));
        }
    }

    /// <inheritdoc/>
    public override double Upper(double rate)
    {
        double sum = 0d;
        for (int i = 0; i < _weights.Length; i++)
            sum += _weights[i] * GammaFunctions.Upper(_shapes[i], rate * _rates[i]);
        return Math.Min(1d, sum);
    }

    /// <inheritdoc/>
    public override double Quantile(double p)
    {
        bool lower = p <= 0.5;
        double u = TailSolver.Solve(u => Read(u, lower), lower ? p : 1d - p, lower, Math.Log(Mean), -746d, 709d);
        return Math.Exp(u);
    }

    /// <summary>The chance that this rate is over a multiple of another, independent one.</summary>
    public double UpperOfRatio(GammaComponents other, double multiple)
    {
        // X/Y of two gamma rates is a beta prime variable: P(X > r Y) = I(b / (b + a r)) with the shape of X last.
        double sum = 0d;
        for (int i = 0; i < Count; i++)
        {
            for (int j = 0; j < other.Count; j++)
            {
                double weight = _weights[i] * other._weights[j];
                if (weight < 1e-10)
                    continue;
                double x = multiple * _rates[i] / ((multiple * _rates[i]) + other._rates[j]);
                sum += weight * BetaFunctions.Upper(_shapes[i], other._shapes[j], x);
            }
        }

        return Math.Min(1d, sum);
    }

    private TailSolver.Reading Read(double u, bool lower)
    {
        double rate = Math.Exp(u);
        double tail = 0d;
        double slope = 0d;
        for (int i = 0; i < _weights.Length; i++)
        {
            double x = rate * _rates[i];
            tail += _weights[i] * (lower ? GammaFunctions.Lower(_shapes[i], x) : GammaFunctions.Upper(_shapes[i], x));
            slope += _weights[i] * _shapes[i] * SaddlePoint.PoissonMass(_shapes[i], x);
        }

        return new(tail, (lower ? slope : -slope) / tail);
    }
}
