namespace Foundress.Science.Numerics;

/// <summary>
/// Logarithm and exponential built from additions, multiplications and divisions only. The runtime's own call the
/// platform's library, whose last digit differs between a phone's browser and a server; a simulation must not.
/// </summary>
/// <remarks>The reductions and coefficients are those of the freely distributable mathematics library fdlibm (Sun Microsystems 1993), under 1 unit in the last place.</remarks>
public static class PortableFunctions
{
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;

    /// <summary>ln x for a finite x above 0 (subnormal numbers included).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not a finite number above 0.</exception>
    public static double Log(double x)
    {
        if (!(x > 0d) || double.IsPositiveInfinity(x))
            throw new ArgumentOutOfRangeException(nameof(x), x, "A logarithm needs a finite number above 0.");
        int exponent = 0;
        if (x < 2.2250738585072014e-308)
        {
            x *= 18014398509481984d;
            exponent = -54;
        }

        long bits = BitConverter.DoubleToInt64Bits(x);
        exponent += (int)(bits >> 52) - 1023;
        double mantissa = BitConverter.Int64BitsToDouble((bits & 0x000F_FFFF_FFFF_FFFF) | 0x3FF0_0000_0000_0000);
        if (mantissa > 1.4142135623730951)
        {
            mantissa *= 0.5;
            exponent++;
        }

        double f = mantissa - 1d;
        double s = f / (2d + f);
        double z = s * s;
        double w = z * z;
        double even = w * (3.999999999940941908e-01 + (w * (2.222219843214978396e-01 + (w * 1.531383769920937332e-01))));
        double odd = z * (6.666666666666735130e-01 + (w * (2.857142874366239149e-01 + (w * (1.818357216161805012e-01 + (w * 1.479819860511658591e-01))))));
        double half = 0.5 * f * f;
        double rest = s * (half + even + odd);
        return (exponent * Ln2High) - ((half - (rest + (exponent * Ln2Low))) - f);
    }

    /// <summary>exp(x); 0 below about -745 and infinite above about 709.78.</summary>
    public static double Exp(double x)
    {
        if (double.IsNaN(x))
            return x;
        if (x > 709.782712893383973096)
            return double.PositiveInfinity;
        if (x < -745.13321910194110842)
            return 0d;

        int k = (int)((1.44269504088896338700 * x) + (x < 0d ? -0.5 : 0.5));
        double high = x - (k * Ln2High);
        double low = k * Ln2Low;
        double r = high - low;
        double t = r * r;
        double c = r - (t * (1.66666666666666019037e-01 + (t * (-2.77777777770155933842e-03 + (t * (6.61375632143793436117e-05
            + (t * (-1.65339022054652515390e-06 + (t * 4.13813679705723846039e-08)))))))));
        double y = 1d - ((low - ((r * c) / (2d - c))) - high);
        if (k > 1023)
            return y * 2d * PowerOfTwo(k - 1);
        return k >= -1021 ? y * PowerOfTwo(k) : y * PowerOfTwo(k + 1000) * PowerOfTwo(-1000);
    }

    private static double PowerOfTwo(int exponent) => BitConverter.Int64BitsToDouble((long)(exponent + 1023) << 52);
}
