using System.Numerics;
using System.Text;

namespace Foundress.Science.Numerics;

/// <summary>
/// A generator of random numbers that gives the same numbers for the same seed on every platform, for ever: a printed seed
/// reproduces a draw or a forecast. Not for secrets. Mutable; not safe for concurrent use.
/// </summary>
/// <remarks>
/// xoshiro256** (Blackman &amp; Vigna 2021, ACM Trans. Math. Softw. 47:36), its state filled by SplitMix64 (Steele, Lea &amp;
/// Flood 2014). Variables with other distributions use <see cref="PortableFunctions"/> and square roots only.
/// </remarks>
public sealed class SeededGenerator
{
    private ulong _s0;
    private ulong _s1;
    private ulong _s2;
    private ulong _s3;
    private double _spareNormal = double.NaN;

    /// <summary>A generator from a seed; every seed is allowed.</summary>
    public SeededGenerator(ulong seed)
    {
        _s0 = SplitMix(ref seed);
        _s1 = SplitMix(ref seed);
        _s2 = SplitMix(ref seed);
        _s3 = SplitMix(ref seed);
    }

    private SeededGenerator(ulong s0, ulong s1, ulong s2, ulong s3) => (_s0, _s1, _s2, _s3) = (s0, s1, s2, s3);

    /// <summary>A generator of its own for a named part of a computation: other parts coming or going do not change it.</summary>
    /// <param name="seed">The seed of the whole.</param>
    /// <param name="name">Name of the part; its UTF-8 bytes are hashed by FNV-1a (64 bits) into the seed.</param>
    public static SeededGenerator ForPart(ulong seed, string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        ulong hash = 14695981039346656037UL;
        foreach (byte b in Encoding.UTF8.GetBytes(name))
            hash = unchecked((hash ^ b) * 1099511628211UL);
        return new SeededGenerator(unchecked(SplitMix(ref seed) ^ hash));
    }

    /// <summary>A generator with a given inner state, to continue or to check a known sequence.</summary>
    /// <exception cref="ArgumentException">All four words are 0, the one state that never changes.</exception>
    public static SeededGenerator FromState(ulong s0, ulong s1, ulong s2, ulong s3) =>
        (s0 | s1 | s2 | s3) != 0UL
            ? new(s0, s1, s2, s3)
            : throw new ArgumentException("The state of the generator may not be all zero.", nameof(s0));

    /// <summary>The next 64 random bits.</summary>
    public ulong NextUInt64()
    {
        ulong result = unchecked(BitOperations.RotateLeft(_s1 * 5UL, 7) * 9UL);
        ulong t = _s1 << 17;
        _s2 ^= _s0;
        _s3 ^= _s1;
        _s1 ^= _s2;
        _s0 ^= _s3;
        _s2 ^= t;
        _s3 = BitOperations.RotateLeft(_s3, 45);
        return result;
    }

    /// <summary>A number from 0 (included) to 1 (excluded), a multiple of 2^-53.</summary>
    public double NextDouble() => (NextUInt64() >> 11) * (1d / 9007199254740992d);

    /// <summary>A whole number from 0 to below a limit, each with the same chance.</summary>
    /// <param name="below">The limit, 1 or more.</param>
    /// <remarks>D. Lemire 2019, ACM Trans. Model. Comput. Simul. 29:3: multiply, and reject the few values that would be favoured.</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="below"/> is below 1.</exception>
    public int NextInt(int below)
    {
        if (below < 1)
            throw new ArgumentOutOfRangeException(nameof(below), below, "A random whole number needs a limit of at least 1.");
        ulong range = (ulong)below;
        ulong high = Math.BigMul(NextUInt64(), range, out ulong low);
        if (low < range)
        {
            ulong favoured = unchecked(0UL - range) % range;
            while (low < favoured)
                high = Math.BigMul(NextUInt64(), range, out low);
        }

        return (int)high;
    }

    /// <summary>A standard normal variable (Marsaglia &amp; Bray 1964, the polar method).</summary>
    public double NextNormal()
    {
        if (!double.IsNaN(_spareNormal))
        {
            double spare = _spareNormal;
            _spareNormal = double.NaN;
            return spare;
        }

        while (true)
        {
            double u = (2d * NextDouble()) - 1d;
            double v = (2d * NextDouble()) - 1d;
            double s = (u * u) + (v * v);
            if (s >= 1d || s == 0d)
                continue;
            double scale = Math.Sqrt(-2d * PortableFunctions.Log(s) / s);
            _spareNormal = v * scale;
            return u * scale;
        }
    }

    /// <summary>An exponential variable with mean 1.</summary>
    public double NextExponential() => -PortableFunctions.Log(1d - NextDouble());

    /// <summary>A gamma variable with rate 1 (Marsaglia &amp; Tsang 2000, ACM Trans. Math. Softw. 26:363-372).</summary>
    /// <param name="shape">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shape"/> is not a finite number above 0.</exception>
    public double NextGamma(double shape)
    {
        if (!(shape > 0d) || !double.IsFinite(shape))
            throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape of a gamma variable is a finite number above 0.");
        if (shape < 1d)
            return NextGamma(shape + 1d) * PortableFunctions.Exp(PortableFunctions.Log(1d - NextDouble()) / shape);

        double d = shape - (1d / 3d);
        double c = 1d / Math.Sqrt(9d * d);
        while (true)
        {
            double x = NextNormal();
            double v = 1d + (c * x);
            if (v <= 0d)
                continue;
            v = v * v * v;
            double u = 1d - NextDouble();
            double square = x * x;
            if (u < 1d - (0.0331 * square * square)
                || PortableFunctions.Log(u) < (0.5 * square) + (d * (1d - v + PortableFunctions.Log(v))))
                return d * v;
        }
    }

    /// <summary>A Poisson count.</summary>
    /// <param name="mean">0 to 1e9.</param>
    /// <remarks>Below 10 by multiplying uniform numbers (Knuth 1969); above by transformed rejection (W. Hörmann 1993, Insurance: Mathematics and Economics 12:39-45, PTRS).</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mean"/> is out of its range.</exception>
    public int NextPoisson(double mean)
    {
        if (mean is not (>= 0d and <= 1e9))
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "The mean of a Poisson count lies between 0 and 1e9.");
        return mean < 10d ? SmallPoisson(mean) : LargePoisson(mean);
    }

    private int SmallPoisson(double mean)
    {
        double limit = PortableFunctions.Exp(-mean);
        int count = 0;
        for (double product = NextDouble(); product > limit; product *= NextDouble())
            count++;
        return count;
    }

    private int LargePoisson(double mean)
    {
        double root = Math.Sqrt(mean);
        double b = 0.931 + (2.53 * root);
        double a = -0.059 + (0.02483 * b);
        double inverseAlpha = 1.1239 + (1.1328 / (b - 3.4));
        double r = 0.9277 - (3.6224 / (b - 2d));
        double logMean = PortableFunctions.Log(mean);
        while (true)
        {
            double u = NextDouble() - 0.5;
            double v = 1d - NextDouble();
            double us = 0.5 - Math.Abs(u);
            double k = Math.Floor((((2d * a / us) + b) * u) + mean + 0.43);
            if (us >= 0.07 && v <= r)
                return (int)k;
            if (k < 0d || k > int.MaxValue || (us < 0.013 && v > us))
                continue;
            if (PortableFunctions.Log(v) + PortableFunctions.Log(inverseAlpha) - PortableFunctions.Log((a / (us * us)) + b)
                <= (k * logMean) - mean - LogFactorial(k))
                return (int)k;
        }
    }

    private static double LogFactorial(double k)
    {
        if (k < 10d)
        {
            double product = 1d;
            for (double i = 2d; i <= k; i++)
                product *= i;
            return PortableFunctions.Log(product);
        }

        return ((k + 0.5) * PortableFunctions.Log(k)) - k + 0.91893853320467274178 + GammaFunctions.StirlingSeries(k);
    }

    private static ulong SplitMix(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15UL;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
