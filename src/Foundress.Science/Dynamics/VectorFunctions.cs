using System.Numerics;
using System.Runtime.CompilerServices;

namespace Foundress.Science.Dynamics;

/// <summary>
/// Exponential and logarithm of many numbers at once, from additions, multiplications and divisions only and with no fused
/// step: every processor, and every width of its vectors, gives the same bits.
/// </summary>
internal static class VectorFunctions
{
    internal const float Log2E = 1.44269504f;
    internal const float Ln2High = 0.693359375f;
    internal const float Ln2Low = -2.12194440e-4f;
    internal const float Ln2 = 0.69314718f;

    /// <summary>exp(x), x held between -87 and 88; relative error below 3e-7.</summary>
    /// <remarks>Reduction by multiples of ln 2 in two parts (Cody &amp; Waite 1980), then the Taylor series to the sixth power.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<float> Exp(Vector<float> x)
    {
        x = Vector.Min(Vector.Max(x, new Vector<float>(-87f)), new Vector<float>(88f));
        Vector<float> n = Vector.Floor((x * new Vector<float>(Log2E)) + new Vector<float>(0.5f));
        Vector<float> r = x - (n * new Vector<float>(Ln2High)) - (n * new Vector<float>(Ln2Low));
        Vector<float> y = (r * new Vector<float>(1f / 720f)) + new Vector<float>(1f / 120f);
        y = (y * r) + new Vector<float>(1f / 24f);
        y = (y * r) + new Vector<float>(1f / 6f);
        y = (y * r) + new Vector<float>(0.5f);
        y = (y * r) + Vector<float>.One;
        y = (y * r) + Vector<float>.One;
        Vector<int> power = Vector.ShiftLeft(Vector.ConvertToInt32(n) + new Vector<int>(127), 23);
        return y * Vector.AsVectorSingle(power);
    }

    /// <summary>ln x for x from 1e-37 to 1e37; absolute error below 1e-7 near 1.</summary>
    /// <remarks>The mantissa is brought to [√½, √2) and ln taken as twice the inverse hyperbolic tangent series to the seventh power.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<float> Log(Vector<float> x)
    {
        Vector<int> bits = Vector.AsVectorInt32(x);
        // Subtracting the bits of √½ moves the exponent's step from 1 to √½.
        Vector<int> shifted = bits - new Vector<int>(0x3F3504F3);
        Vector<int> exponent = Vector.ShiftRightArithmetic(shifted, 23);
        Vector<float> m = Vector.AsVectorSingle((shifted & new Vector<int>(0x007FFFFF)) + new Vector<int>(0x3F3504F3));
        Vector<float> f = m - Vector<float>.One;
        Vector<float> s = f / (m + Vector<float>.One);
        Vector<float> z = s * s;
        Vector<float> y = (z * new Vector<float>(2f / 7f)) + new Vector<float>(2f / 5f);
        y = (y * z) + new Vector<float>(2f / 3f);
        y = (y * z) + new Vector<float>(2f);
        return (y * s) + (Vector.ConvertToSingle(exponent) * new Vector<float>(Ln2));
    }
}
