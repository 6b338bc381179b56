namespace Foundress.Science.Estimation;

/// <summary>
/// What the jars say about how unequal the colonies of an apiary are: the posterior of the spread, the standard deviation of
/// the colonies' levels over their mean. A spread of 1 is a shape k of 1, a spread of 0.45 a k of 5.
/// </summary>
public sealed class SpreadPosterior
{
    private const int Halvings = 60;

    private readonly SpreadRule _rule;
    private readonly double[] _coefficients;

    internal SpreadPosterior(SpreadRule rule, ReadOnlySpan<double> weights)
    {
        // The density is a polynomial through the nodes, written in Legendre polynomials: its integral is known exactly.
        _rule = rule;
        _coefficients = new double[SpreadRule.Count];
        Span<double> legendre = stackalloc double[SpreadRule.Count + 1];
        for (int i = 0; i < SpreadRule.Count; i++)
        {
            Legendre(SpreadRule.UnitNodes[i], legendre);
            for (int degree = 0; degree < SpreadRule.Count; degree++)
                _coefficients[degree] += 0.5 * weights[i] * legendre[degree];
            Mean += weights[i] * rule.Nodes[i];
        }
    }

    /// <summary>The mean spread.</summary>
    public double Mean { get; }

    /// <summary>The spread that is as likely to be exceeded as not.</summary>
    public double Median => Quantile(0.5);

    /// <summary>The chance that the spread is over a value.</summary>
    /// <param name="spread">0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="spread"/> is negative or not a number.</exception>
    public Chance ChanceOver(double spread) => spread >= 0d
        ? Chance.Of(1d - Below(spread))
        : throw new ArgumentOutOfRangeException(nameof(spread), spread, "A spread between colonies is 0 or more.");

    /// <summary>The spread with a given chance of being lower.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public double Quantile(double p)
    {
        if (p is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile is asked for a chance above 0 and below 1.");
        double low = _rule.Low;
        double high = _rule.High;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            if (Below(middle) < p)
                low = middle;
            else
                high = middle;
        }

        return 0.5 * (low + high);
    }

    /// <summary>The shape k with a given chance of being lower; infinite shapes (equal colonies) are the limit of a spread of 0.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public double ShapeQuantile(double p)
    {
        double spread = Quantile(1d - p);
        return 1d / (spread * spread);
    }

    private static void Legendre(double x, Span<double> values)
    {
        values[0] = 1d;
        values[1] = x;
        for (int n = 2; n < values.Length; n++)
            values[n] = ((((2d * n) - 1d) * x * values[n - 1]) - ((n - 1d) * values[n - 2])) / n;
    }

    private double Below(double spread)
    {
        if (spread <= _rule.Low)
            return 0d;
        if (spread >= _rule.High)
            return 1d;
        double x = (((2d * spread) - _rule.Low - _rule.High) / (_rule.High - _rule.Low));
        Span<double> legendre = stackalloc double[SpreadRule.Count + 1];
        Legendre(x, legendre);

        // (2n+1) ∫ P_n = P_(n+1) - P_(n-1), from -1.
        double sum = _coefficients[0] * (x + 1d);
        for (int degree = 1; degree < SpreadRule.Count; degree++)
            sum += _coefficients[degree] * (legendre[degree + 1] - legendre[degree - 1]);
        return Math.Clamp(sum, 0d, 1d);
    }
}
