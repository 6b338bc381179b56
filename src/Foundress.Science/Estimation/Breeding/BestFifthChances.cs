namespace Foundress.Science.Estimation;

/// <summary>
/// For each colony the posterior of its growth on a common grid, and the chance that it is among the slowest few. For each
/// spread between colonies the growths are taken as independent given the jars; the number of others below a value then
/// follows from a running product.
/// </summary>
internal sealed class BestFifthChances
{
    private const double Negligible = 1e-6;

    private readonly GrowthLikelihood[] _likelihoods;
    private readonly NormalPool _pool;
    private readonly int _nodes;
    private readonly double _start;
    private readonly double _step;
    private readonly double[][] _likelihood;

    public BestFifthChances(GrowthLikelihood[] likelihoods, NormalPool pool, int nodes)
    {
        (_likelihoods, _pool, _nodes) = (likelihoods, pool, nodes);
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        for (int node = 0; node < pool.Weights.Length; node++)
        {
            if (pool.Weights[node] < Negligible)
                continue;
            low = Math.Min(low, pool.Centre(node) - (5d * pool.Width(node)));
            high = Math.Max(high, pool.Centre(node) + (5d * pool.Width(node)));
        }

        _step = (high - low) / (nodes - 1);
        _start = low;
        _likelihood = new double[likelihoods.Length][];
        for (int i = 0; i < likelihoods.Length; i++)
        {
            double[] values = new double[nodes];
            double top = double.NegativeInfinity;
            for (int x = 0; x < nodes; x++)
                top = Math.Max(top, values[x] = likelihoods[i].Log(low + (x * _step)));
            for (int x = 0; x < nodes; x++)
                values[x] = Math.Exp(values[x] - top);
            _likelihood[i] = values;
        }
    }

    public (double[][] Densities, double[] Best, double Start, double Step) Compute(int pick)
    {
        int count = _likelihoods.Length;
        double[][] total = NewRows(count);
        double[] best = new double[count];
        double[][] own = NewRows(count);
        double[] shape = new double[_nodes];
        int centres = NormalPool.Centres;
        for (int s = 0; s * centres < _pool.Weights.Length; s++)
        {
            double chance = 0d;
            for (int m = 0; m < centres; m++)
                chance += _pool.Weights[(s * centres) + m];
            if (chance < Negligible)
                continue;

            foreach (double[] row in own)
                Array.Clear(row);
            for (int m = 0; m < centres; m++)
            {
                int node = (s * centres) + m;
                double weight = _pool.Weights[node] / chance;
                if (weight < Negligible)
                    continue;
                double variance = (_pool.Width(node) * _pool.Width(node)) + (_step * _step / 12d);
                for (int x = 0; x < _nodes; x++)
                {
                    double gap = _start + (x * _step) - _pool.Centre(node);
                    shape[x] = Math.Exp(-0.5 * gap * gap / variance);
                }

                for (int i = 0; i < count; i++)
                    AddNormalised(own[i], _likelihood[i], shape, weight);
            }

            AddBest(best, own, chance, pick);
            for (int i = 0; i < count; i++)
            {
                for (int x = 0; x < _nodes; x++)
                    total[i][x] += chance * own[i][x];
            }
        }

        foreach (double[] row in total)
            Scale(row);
        return (total, best, _start, _step);
    }

    private static void AddNormalised(double[] into, double[] likelihood, double[] shape, double weight)
    {
        double sum = 0d;
        for (int x = 0; x < shape.Length; x++)
            sum += likelihood[x] * shape[x];
        if (!(sum > 0d))
            return;
        for (int x = 0; x < shape.Length; x++)
            into[x] += weight / sum * likelihood[x] * shape[x];
    }

    private static void Scale(double[] row)
    {
        double sum = 0d;
        foreach (double value in row)
            sum += value;
        for (int x = 0; x < row.Length; x++)
            row[x] /= sum;
    }

    // At each x: chance that fewer than `pick` of the others lie below, from products over the colonies before and after.
    private void AddBest(double[] best, double[][] density, double chance, int pick)
    {
        int count = density.Length;
        double[] below = new double[count];
        double[] before = new double[(count + 1) * pick];
        double[] after = new double[(count + 1) * pick];
        for (int x = 0; x < _nodes; x++)
        {
            before.AsSpan(0, pick).Clear();
            before[0] = 1d;
            for (int i = 0; i < count; i++)
                Step(before.AsSpan(i * pick, pick), before.AsSpan((i + 1) * pick, pick), below[i] + (0.5 * density[i][x]));
            after.AsSpan(count * pick, pick).Clear();
            after[count * pick] = 1d;
            for (int i = count - 1; i >= 0; i--)
                Step(after.AsSpan((i + 1) * pick, pick), after.AsSpan(i * pick, pick), below[i] + (0.5 * density[i][x]));

            for (int i = 0; i < count; i++)
            {
                if (density[i][x] > 0d)
                    best[i] += chance * density[i][x] * FewerThan(pick, before.AsSpan(i * pick, pick), after.AsSpan((i + 1) * pick, pick));
                below[i] += density[i][x];
            }
        }
    }

    private static void Step(ReadOnlySpan<double> from, Span<double> to, double p)
    {
        p = Math.Min(1d, p);
        to[0] = from[0] * (1d - p);
        for (int n = 1; n < to.Length; n++)
            to[n] = (from[n] * (1d - p)) + (from[n - 1] * p);
    }

    private static double FewerThan(int pick, ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        double sum = 0d;
        double running = 0d;
        for (int n = 0; n < pick; n++)
        {
            running += after[n];
            sum += before[pick - 1 - n] * running;
        }

        return sum;
    }

    private double[][] NewRows(int count)
    {
        double[][] rows = new double[count][];
        for (int i = 0; i < count; i++)
            rows[i] = new double[_nodes];
        return rows;
    }
}
