namespace Foundress.Science.Forecasting;

/// <summary>Quantiles of many positive numbers without sorting them.</summary>
/// <remarks>
/// The bits of positive floats are in their order: numbers are counted by their upper 16 bits, and a quantile lies along a
/// straight line within its bin. A bin is 0.8 % of its number wide.
/// </remarks>
internal sealed class LoadQuantiles
{
    private const int Bins = 1 << 15;

    private readonly int[] _counts = new int[Bins];

    /// <param name="values">Numbers, 0 or more.</param>
    /// <param name="chances">In rising order, each from 0 to 1.</param>
    /// <param name="results">Receives a quantile for each chance.</param>
    internal void Fill(ReadOnlySpan<float> values, ReadOnlySpan<double> chances, Span<float> results)
    {
        int low = Bins - 1;
        int high = 0;
        foreach (float value in values)
        {
            int bin = BitConverter.SingleToInt32Bits(value) >> 16;
            _counts[bin]++;
            low = Math.Min(low, bin);
            high = Math.Max(high, bin);
        }

        int next = 0;
        long before = 0;
        for (int bin = low; bin <= high; bin++)
        {
            int here = _counts[bin];
            _counts[bin] = 0;
            while (here > 0 && next < chances.Length && chances[next] * values.Length <= before + here)
            {
                double part = Math.Clamp(((chances[next] * values.Length) - before) / here, 0d, 1d);
                float from = BitConverter.Int32BitsToSingle(bin << 16);
                float to = BitConverter.Int32BitsToSingle((bin + 1) << 16);
                results[next++] = bin == 0 ? 0f : from + ((float)part * (to - from));
            }

            before += here;
        }

        while (next < chances.Length)
            results[next++] = BitConverter.Int32BitsToSingle((high + 1) << 16);
    }
}
