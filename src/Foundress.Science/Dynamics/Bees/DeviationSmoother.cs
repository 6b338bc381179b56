using Foundress.Science.Numerics;

namespace Foundress.Science.Dynamics.Bees;

/// <summary>
/// A deviation that comes and goes: normal, with a fixed variance, and a correlation that falls by 1/e in its memory
/// (Ornstein-Uhlenbeck, by days). From what was seen on some days it gives mean and variance on every day, before, between and
/// after them.
/// </summary>
/// <remarks>Kalman filter forwards (R. E. Kalman 1960, J. Basic Eng. 82:35-45), then the fixed-interval smoother backwards (H. E. Rauch, F. Tung &amp; C. T. Striebel 1965, AIAA J. 3:1445-1450).</remarks>
public static class DeviationSmoother
{
    /// <summary>Fills mean and variance.</summary>
    /// <param name="seen">What was seen, by day: the deviation and the variance of the error in seeing it.</param>
    /// <param name="variance">Variance of the deviation where nothing was seen.</param>
    /// <param name="memory">Days in which its correlation falls by 1/e.</param>
    /// <param name="unseen">Variance to add on each day, for what happened unseen.</param>
    /// <param name="means">Filled with the mean on each day.</param>
    /// <param name="variances">Filled with the variance on each day.</param>
    /// <exception cref="ArgumentException">The lengths differ, or what was seen is not in order of days within them.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The variance or the memory is not a finite number above 0.</exception>
    public static void Fill(
        ReadOnlySpan<DeviationSeen> seen, double variance, double memory, ReadOnlySpan<double> unseen, Span<double> means, Span<double> variances)
    {
        if (!(variance > 0d) || !double.IsFinite(variance))
            throw new ArgumentOutOfRangeException(nameof(variance), variance, "A variance is a finite number above 0.");
        if (!(memory > 0d) || !double.IsFinite(memory))
            throw new ArgumentOutOfRangeException(nameof(memory), memory, "A memory is a finite number of days above 0.");
        if (unseen.Length != means.Length || variances.Length != means.Length)
            throw new ArgumentException($"{means.Length} days need as many added variances and places for variances; found {unseen.Length} and {variances.Length}.", nameof(variances));
        double kept = PortableFunctions.Exp(-1d / memory);
        double gain = (1d - (kept * kept)) * variance;
        int next = 0;
        for (int day = 0; day < means.Length; day++)
        {
            double mean = day == 0 ? 0d : kept * means[day - 1];
            double spread = day == 0 ? variance : (kept * kept * variances[day - 1]) + gain;
            spread += unseen[day];
            for (; next < seen.Length && seen[next].Day == day; next++)
            {
                double weight = spread / (spread + seen[next].Variance);
                mean += weight * (seen[next].Deviation - mean);
                spread *= 1d - weight;
            }

            means[day] = mean;
            variances[day] = spread;
        }

        if (next < seen.Length)
            throw new ArgumentException($"What was seen on day {seen[next].Day} is out of order or outside the {means.Length} days.", nameof(seen));
        for (int day = means.Length - 2; day >= 0; day--)
        {
            double ahead = (kept * kept * variances[day]) + gain + unseen[day + 1];
            double back = kept * variances[day] / ahead;
            means[day] += back * (means[day + 1] - (kept * means[day]));
            variances[day] += back * back * (variances[day + 1] - ahead);
        }
    }
}
