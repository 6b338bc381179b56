using System.Numerics;
using System.Runtime.CompilerServices;

namespace Foundress.Science.Dynamics;

/// <summary>
/// The exponential of many numbers at once, from additions and multiplications only and with no fused
/// step: every processor, and every width of its vectors, gives the same bits.
/// </summary>
internal static class VectorFunctions
{
    internal const float Log2E = 1.44269504f;
    internal const float Ln2High = 0.693359375f;
    internal const float Ln2Low = -2.12194440e-4f;

    /// <summary>exp(x), x held between -87 and 88; relative error below 3e-7.</summary>
    /// <remarks>Reduction by multiples of ln 2 in two parts (Cody &amp; Waite 1980), then the Taylor series to the sixth power.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<float> Exp(Vector<float> x) => ExpOfNegative(Vector.Min(x, new Vector<float>(88f)));

    /// <summary>Puts exp(x) in the place of each x, -87 to 88.</summary>
    internal static void Exp(Span<float> values)
    {
        int whole = values.Length - (values.Length % Vector<float>.Count);
        for (int i = 0; i < whole; i += Vector<float>.Count)
            Exp(new Vector<float>(values[i..])).CopyTo(values[i..]);
        if (whole == values.Length)
            return;

        // The rest goes through the same steps, so that the width of the vectors changes nothing.
        Span<float> rest = stackalloc float[Vector<float>.Count];
        values[whole..].CopyTo(rest);
        Exp(new Vector<float>(rest)).CopyTo(rest);
        rest[..(values.Length - whole)].CopyTo(values[whole..]);
    }

    /// <summary>exp(x) of numbers up to 88 at most, mostly below 0: as <see cref="Exp(Vector{float})"/> with one step less.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<float> ExpOfNegative(Vector<float> x)
    {
        x = Vector.Max(x, new Vector<float>(-87f));
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
}
