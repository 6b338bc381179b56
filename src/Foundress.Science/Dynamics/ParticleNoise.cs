using System.Numerics;
using System.Runtime.CompilerServices;

namespace Foundress.Science.Dynamics;

/// <summary>
/// Random numbers of a particle as a function of (seed, day, draw, particle): no state, so that particles may be worked in
/// any grouping, and two futures of one particle meet the same luck.
/// </summary>
/// <remarks>The 32-bit finalizer is the two-multiplication mix found by C. Wellons' search (2018) in the form of Murmur's; each particle's key and each draw's word are mixed before they meet.</remarks>
internal static class ParticleNoise
{
    /// <summary>1 / standard deviation of a sum of four uniform bytes: 4 · (256² - 1) / 12.</summary>
    internal const float ByteSumScale = 1f / 147.80054f;

    internal static uint Mix(uint x)
    {
        unchecked
        {
            x ^= x >> 16;
            x *= 0x7FEB352Du;
            x ^= x >> 15;
            x *= 0x846CA68Bu;
            return x ^ (x >> 16);
        }
    }

    /// <summary>The word of one draw on one day.</summary>
    internal static uint Word(uint seed, int day, int draw) => unchecked(Mix(seed ^ Mix(((uint)day * 16u) + (uint)draw + 0x9E3779B9u)));

    /// <summary>The key of a particle.</summary>
    internal static uint Key(int particle) => unchecked(Mix(((uint)particle * 0x9E3779B9u) + 0x7F4A7C15u));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<uint> Bits(Vector<uint> keys, uint word)
    {
        Vector<uint> x = keys + new Vector<uint>(word);
        x ^= Vector.ShiftRightLogical(x, 16);
        x *= new Vector<uint>(0x7FEB352Du);
        x ^= Vector.ShiftRightLogical(x, 15);
        x *= new Vector<uint>(0x846CA68Bu);
        return x ^ Vector.ShiftRightLogical(x, 16);
    }

    /// <summary>Roughly normal, mean 0, variance 1: the sum of four bytes (range ±3.45).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<float> Normal(Vector<uint> bits)
    {
        Vector<uint> mask = new(255u);
        Vector<uint> sum = (bits & mask) + (Vector.ShiftRightLogical(bits, 8) & mask) + (Vector.ShiftRightLogical(bits, 16) & mask) + Vector.ShiftRightLogical(bits, 24);
        return (Vector.ConvertToSingle(Vector.AsVectorInt32(sum)) - new Vector<float>(510f)) * new Vector<float>(ByteSumScale);
    }

    /// <summary>Fills room with roughly normal numbers, one for each key.</summary>
    internal static void Normals(uint[] keys, uint word, float[] normals)
    {
        for (int i = 0; i < keys.Length; i += Vector<float>.Count)
            Normal(Bits(new Vector<uint>(keys, i), word)).CopyTo(normals, i);
    }

    /// <summary>Uniform from 0 to below 1 in steps of 2^-16, hardly related to <see cref="Normal"/> of the same bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<float> Uniform(Vector<uint> bits)
    {
        Vector<uint> x = (bits ^ Vector.ShiftRightLogical(bits, 15)) * new Vector<uint>(0x2C1B3C6Du);
        return Vector.ConvertToSingle(Vector.AsVectorInt32(Vector.ShiftRightLogical(x, 16))) * new Vector<float>(1f / 65536f);
    }

    /// <summary>
    /// A whole number with a given mean and about a given variance, never below 0: chance in the flows of a few mites.
    /// </summary>
    /// <remarks>A gamma variable by the cube of Wilson &amp; Hilferty (1931), rounded up or down at random so that the mean stays; what the rounding adds to the variance is taken off first.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector<float> Whole(Vector<float> mean, Vector<float> variance, Vector<uint> bits)
    {
        Vector<float> sixth = new(1f / 6f);
        Vector<float> square = mean * mean;
        Vector<float> rounding = Vector.ConditionalSelect(Vector.LessThan(mean, new Vector<float>(0.2113f)), mean - square, sixth);
        Vector<float> relative = Vector.Max(variance - rounding, Vector<float>.Zero) / (square + new Vector<float>(1e-12f));
        Vector<float> t = Vector<float>.One - (relative * new Vector<float>(1f / 9f)) + (Normal(bits) * Vector.SquareRoot(relative) * new Vector<float>(1f / 3f));
        t = Vector.Max(t, Vector<float>.Zero);
        return Vector.Floor((mean * (t * t * t)) + Uniform(bits));
    }
}
