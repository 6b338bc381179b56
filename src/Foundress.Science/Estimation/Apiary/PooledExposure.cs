namespace Foundress.Science.Estimation;

/// <summary>
/// The exposure (bees times recovery) of all jars of a colony as one lognormal number: median and standard deviation of its
/// logarithm, given how the mites fell among the jars.
/// </summary>
/// <remarks>
/// Exact for counted jars and for a single uncertain jar. For several jars, the likelihood of the counts splits into a
/// Poisson factor for their total and a multinomial one for the shares; the sizes given the shares are taken as normal on the
/// log scale around their mode (Laplace), and the logarithm of their sum is expanded to second order.
/// </remarks>
internal readonly record struct PooledExposure(int Mites, double Median, double LogSpread)
{
    private const int NewtonSteps = 60;
    private const double LargestMove = 0.7;

    public static PooledExposure Of(IReadOnlyList<JarCount> jars)
    {
        int mites = 0;
        double exposure = 0d;
        bool counted = true;
        foreach (JarCount jar in jars)
        {
            mites = checked(mites + jar.Mites);
            exposure += jar.Exposure;
            counted &= jar.Bees.LogSpread == 0d;
        }

        if (counted)
            return new(mites, exposure, 0d);
        return jars.Count == 1 ? new(mites, exposure, jars[0].Bees.LogSpread) : OfShares(jars, mites);
    }

    // Newton's method on x = ln sizes. The curvature is diag(d) - y p p' with d = 1/s² + y p: Sherman-Morrison inverts it.
    // A counted jar has no variance at all, so everything is written in v = 1/d = s² / (1 + y p s²).
    private static PooledExposure OfShares(IReadOnlyList<JarCount> jars, int mites)
    {
        int count = jars.Count;
        double[] log = new double[count];
        double[] share = new double[count];
        double[] variance = new double[count];
        for (int j = 0; j < count; j++)
            log[j] = Math.Log(jars[j].Exposure);

        double total = Shares(log, share);
        for (int step = 0; step < NewtonSteps; step++)
        {
            double across = 0d;
            double pull = 0d;
            for (int j = 0; j < count; j++)
            {
                double square = jars[j].Bees.LogSpread * jars[j].Bees.LogSpread;
                variance[j] = square / (1d + (mites * share[j] * square));
                across += share[j] * share[j] * variance[j];
                pull += share[j] * Gradient(jars[j], j) * Damped(jars[j], variance[j]);
            }

            double back = mites * pull / (1d - (mites * across));
            double largest = 0d;
            for (int j = 0; j < count; j++)
            {
                double move = (Damped(jars[j], variance[j]) * Gradient(jars[j], j)) + (variance[j] * share[j] * back);
                log[j] += Math.Clamp(move, -LargestMove, LargestMove);
                largest = Math.Max(largest, Math.Abs(move));
            }

            total = Shares(log, share);
            if (largest < 1e-10)
                break;
        }

        double own = 0d;
        double mean = 0d;
        for (int j = 0; j < count; j++)
        {
            double square = jars[j].Bees.LogSpread * jars[j].Bees.LogSpread;
            variance[j] = square / (1d + (mites * share[j] * square));
            own += share[j] * share[j] * variance[j];
            mean += share[j] * variance[j];
        }

        // p'A⁻¹p, and half the trace of (diag(p) - pp')A⁻¹ for the mean of ln Σ exp x.
        double spread = own / (1d - (mites * own));
        double cubes = 0d;
        for (int j = 0; j < count; j++)
            cubes += share[j] * share[j] * share[j] * variance[j] * variance[j];
        double shift = 0.5 * (mean + (mites * cubes / (1d - (mites * own))) - spread);
        return new(mites, total * Math.Exp(shift), Math.Sqrt(spread));

        // Derivative of the log posterior of one log size, its normal prior multiplied by the jar's own variance where that is 0.
        double Gradient(JarCount jar, int j)
        {
            double square = jar.Bees.LogSpread * jar.Bees.LogSpread;
            return (square * (jar.Mites - (mites * share[j]))) - (log[j] - Math.Log(jar.Exposure));
        }

        static double Damped(JarCount jar, double variance)
        {
            double square = jar.Bees.LogSpread * jar.Bees.LogSpread;
            return square == 0d ? 0d : variance / square;
        }
    }

    private static double Shares(double[] log, double[] share)
    {
        double total = 0d;
        for (int j = 0; j < log.Length; j++)
            total += share[j] = Math.Exp(log[j]);
        for (int j = 0; j < log.Length; j++)
            share[j] /= total;
        return total;
    }
}
