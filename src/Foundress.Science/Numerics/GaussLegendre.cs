namespace Foundress.Science.Numerics;

/// <summary>Gauss-Legendre quadrature on -1 to 1: exact for polynomials up to degree 2n - 1.</summary>
/// <remarks>Nodes are roots of the Legendre polynomial found by Newton's method from Tricomi's guess (DLMF 3.5(v)). Immutable.</remarks>
public sealed class GaussLegendre
{
    private readonly double[] _nodes;
    private readonly double[] _weights;

    /// <summary>The rule with a given number of nodes.</summary>
    /// <param name="count">1 to 256.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is out of its range.</exception>
    public GaussLegendre(int count)
    {
        if (count is < 1 or > 256)
            throw new ArgumentOutOfRangeException(nameof(count), count, "A Gauss-Legendre rule here has 1 to 256 nodes.");
        _nodes = new double[count];
        _weights = new double[count];
        for (int i = 0; i < (count + 1) / 2; i++)
        {
            double x = Math.Cos(Math.PI * (i + 0.75) / (count + 0.5));
            double slope = 0d;
            for (int step = 0; step < 8; step++)
            {
                (double value, slope) = Legendre(count, x);
                x -= value / slope;
            }

            if (count % 2 == 1 && i == count / 2)
            {
                x = 0d;
                slope = Legendre(count, x).Slope;
            }

            _nodes[i] = -x;
            _nodes[count - 1 - i] = x;
            _weights[i] = _weights[count - 1 - i] = 2d / ((1d - (x * x)) * slope * slope);
        }
    }

    /// <summary>The nodes, rising.</summary>
    public ReadOnlySpan<double> Nodes => _nodes;

    /// <summary>The weights, in the order of the nodes; they add up to 2.</summary>
    public ReadOnlySpan<double> Weights => _weights;

    private static (double Value, double Slope) Legendre(int degree, double x)
    {
        double before = 1d;
        double value = x;
        for (int n = 2; n <= degree; n++)
            (before, value) = (value, (((2d * n) - 1d) * x * value - ((n - 1d) * before)) / n);
        double slope = degree * ((x * value) - before) / ((x * x) - 1d);
        return (value, slope);
    }
}
