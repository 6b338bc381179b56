namespace Foundress.Science.Verifying;

/// <summary>A density over evenly spaced natural logarithms of the ratio, straight between the nodes.</summary>
internal sealed class GridLaw : IRatioLaw
{
    private readonly double _first;
    private readonly double _step;
    private readonly double[] _density;
    private readonly double[] _below;

    /// <param name="first">The first node.</param>
    /// <param name="step">Distance of the nodes.</param>
    /// <param name="density">Density at the nodes up to a factor; at least two nodes, not all 0.</param>
    public GridLaw(double first, double step, ReadOnlySpan<double> density)
    {
        (_first, _step) = (first, step);
        _below = new double[density.Length];
        for (int i = 1; i < density.Length; i++)
            _below[i] = _below[i - 1] + (0.5 * step * (density[i - 1] + density[i]));
        double total = _below[^1];
        _density = new double[density.Length];
        for (int i = 0; i < density.Length; i++)
        {
            _density[i] = density[i] / total;
            _below[i] /= total;
        }
    }

    public double Step => _step;

    public int Count => _density.Length;

    public double Node(int i) => _first + (i * _step);

    public double Density(int i) => _density[i];

    public double Below(double ratio)
    {
        double place = (Math.Log(ratio) - _first) / _step;
        if (!(place > 0d))
            return 0d;
        if (place >= _density.Length - 1)
            return 1d;
        int i = (int)place;
        return BelowIn(i, place - i);
    }

    public double Quantile(double p)
    {
        int high = Array.BinarySearch(_below, p);
        if (high >= 0)
            return Math.Exp(Node(high));
        int cell = Math.Clamp(~high - 1, 0, _density.Length - 2);
        // The curve rises in each cell, so halving finds the point; 60 halvings are below rounding.
        double left = 0d;
        double right = 1d;
        for (int step = 0; step < 60; step++)
        {
            double middle = 0.5 * (left + right);
            if (BelowIn(cell, middle) < p)
                left = middle;
            else
                right = middle;
        }

        return Math.Exp(_first + ((cell + (0.5 * (left + right))) * _step));
    }

    private double BelowIn(int cell, double part) =>
        _below[cell] + (_step * part * (_density[cell] + (0.5 * part * (_density[cell + 1] - _density[cell]))));

    /// <summary>The law of this ratio over an independent one: nodes as far apart as here.</summary>
    /// <param name="other">A law on the same step.</param>
    public GridLaw Over(GridLaw other)
    {
        int count = Count + other.Count - 1;
        var density = new double[count];
        for (int j = 0; j < other.Count; j++)
        {
            double weight = other._density[j];
            int shift = other.Count - 1 - j;
            for (int i = 0; i < Count; i++)
                density[i + shift] += weight * _density[i];
        }

        return new(_first - other.Node(other.Count - 1), _step, density);
    }

    /// <summary>The law of this ratio over an independent lognormal one.</summary>
    /// <param name="median">Its median, above 0.</param>
    /// <param name="logSpread">Standard deviation of its logarithm; 0 for a number that is known.</param>
    public GridLaw Over(double median, double logSpread)
    {
        // A bell narrower than the nodes is a shift.
        if (logSpread < 0.5 * _step)
            return new(_first - Math.Log(median), _step, _density);
        int half = (int)Math.Ceiling(8d * logSpread / _step);
        var bell = new double[(2 * half) + 1];
        for (int i = 0; i < bell.Length; i++)
        {
            double z = (i - half) * _step / logSpread;
            bell[i] = Math.Exp(-0.5 * z * z);
        }

        return Over(new GridLaw(Math.Log(median) - (half * _step), _step, bell));
    }
}
