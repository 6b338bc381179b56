namespace Foundress.Science.Numerics;

/// <summary>
/// Logarithm and exponential near the points where the plain forms lose digits. The runtime's own <c>LogP1</c> and
/// <c>ExpM1</c> are the plain forms.
/// </summary>
internal static class ElementaryFunctions
{
    /// <summary>ln(1 + x) without loss of digits for small x; x above -1.</summary>
    /// <remarks>Kahan's correction: the rounding error of 1 + x is divided out (Higham 2002, Accuracy and Stability of Numerical Algorithms, 1.14).</remarks>
    public static double Log1P(double x)
    {
        double sum = 1d + x;
        return sum == 1d ? x : Math.Log(sum) * (x / (sum - 1d));
    }

    /// <summary>exp(x) - 1 without loss of digits for small x.</summary>
    /// <remarks>Kahan's correction, as for <see cref="Log1P"/>.</remarks>
    public static double ExpM1(double x)
    {
        if (Math.Abs(x) > 1d)
            return Math.Exp(x) - 1d;
        double power = Math.Exp(x);
        return power == 1d ? x : (power - 1d) * (x / Math.Log(power));
    }
}
