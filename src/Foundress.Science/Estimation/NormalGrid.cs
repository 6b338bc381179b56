namespace Foundress.Science.Estimation;

/// <summary>
/// An evenly spaced grid for averages over a standard normal variable. For a smooth function the error of the plain sum
/// falls faster than any power of the step (Trefethen &amp; Weideman 2014, SIAM Review 56:385-458), so a step set by how sharp
/// the function is gives twelve digits with no adaptive choice: the same inputs give the same sum.
/// </summary>
internal sealed class NormalGrid
{
    // Far enough that a tail of 1e-15 of the averaged function, met only at an unlikely bee count, is not cut off.
    private const double Reach = 10d;

    private readonly double _step;
    private readonly double[] _weights;

    private NormalGrid(double step)
    {
        int half = (int)Math.Ceiling(Reach / step);
        _step = step;
        _weights = new double[(2 * half) + 1];
        for (int i = 0; i < _weights.Length; i++)
            _weights[i] = step * Math.Exp(-0.5 * Node(i) * Node(i)) / Math.Sqrt(2d * Math.PI);
    }

    /// <summary>Number of nodes.</summary>
    public int Count => _weights.Length;

    /// <summary>A grid fit for a function that rises or falls over about 1/<paramref name="sharpness"/> of a standard deviation.</summary>
    public static NormalGrid For(double sharpness) => new(0.45 / Math.Sqrt(1.96 + (sharpness * sharpness)));

    /// <summary>The i-th node.</summary>
    public double Node(int i) => (i - (_weights.Length / 2)) * _step;

    /// <summary>The i-th weight: the normal density times the step.</summary>
    public double Weight(int i) => _weights[i];
}
