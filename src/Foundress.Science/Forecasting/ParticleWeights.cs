namespace Foundress.Science.Forecasting;

/// <summary>Weights of particles: brought to a sum of 1, their effective number, and particles chosen by them.</summary>
internal static class ParticleWeights
{
    /// <summary>Brings the weights to a sum of 1; all alike where none is above 0.</summary>
    internal static void Normalise(double[] weights)
    {
        double sum = 0d;
        foreach (double weight in weights)
            sum += weight;
        if (!(sum > 0d))
        {
            Array.Fill(weights, 1d / weights.Length);
            return;
        }
        for (int i = 0; i < weights.Length; i++)
            weights[i] /= sum;
    }

    /// <summary>How many particles of the same weight tell as much: 1 over the sum of squares of weights whose sum is 1.</summary>
    internal static double Effective(double[] weights)
    {
        double squares = 0d;
        foreach (double weight in weights)
            squares += weight * weight;
        return 1d / squares;
    }

    /// <summary>Chooses particles in proportion to their weights.</summary>
    /// <remarks>Systematic resampling (Kitagawa 1996): one random number for all.</remarks>
    /// <param name="weights">Weights whose sum is 1.</param>
    /// <param name="at">A random number from 0 to below 1.</param>
    /// <param name="from">Receives for each place the particle chosen, in rising order.</param>
    internal static void Choose(double[] weights, double at, int[] from)
    {
        double sum = weights[0] * weights.Length;
        int source = 0;
        for (int i = 0; i < from.Length; i++)
        {
            while (sum < at + i && source < weights.Length - 1)
                sum += weights[++source] * weights.Length;
            from[i] = source;
        }
    }
}
