using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>The probability of a count for each particle.</summary>
/// <remarks>Negative binomial about the particle's mean, mixed with a small share of counts that say nothing: one slip of the pen must not rule a colony out.</remarks>
internal static class CountLikelihood
{
    /// <summary>Size of the distribution of counts that say nothing.</summary>
    internal const double StraySize = 0.5;

    /// <summary>The chance that a count says nothing of its colony and comes out as it did.</summary>
    internal static double Stray(Evidence evidence, ForecastPriors priors)
    {
        double mean = evidence.Kind == EvidenceKind.Fall ? Math.Max(evidence.Count, 1d) : evidence.Base * priors.StrayLoad;
        return priors.StrayShare * PortableFunctions.Exp(LogProbability(evidence.Count, mean, StraySize));
    }

    /// <summary>Multiplies weights by the probability of a count to a power.</summary>
    /// <returns>The weighted mean of that probability.</returns>
    internal static double Weigh(Evidence evidence, double stray, double own, ReadOnlySpan<float> means, double power, Span<double> weights)
    {
        double size = evidence.Size;
        int count = evidence.Count;
        double constant = GammaFunctions.LogGamma(count + size) - GammaFunctions.LogGamma(size) - GammaFunctions.LogGamma(count + 1d);
        double sizePart = size * PortableFunctions.Log(size);
        double total = 0d;
        for (int i = 0; i < means.Length; i++)
        {
            double mean = Math.Max(means[i], 1e-9);
            double log = constant + sizePart + (count * PortableFunctions.Log(mean)) - ((size + count) * PortableFunctions.Log(size + mean));
            double probability = (own * PortableFunctions.Exp(log)) + stray;
            if (power != 1d)
                probability = PortableFunctions.Exp(power * PortableFunctions.Log(Math.Max(probability, 1e-300)));
            weights[i] *= probability;
            total += weights[i];
        }

        return total;
    }

    internal static double LogProbability(int count, double mean, double size)
    {
        double safe = Math.Max(mean, 1e-9);
        return GammaFunctions.LogGamma(count + size) - GammaFunctions.LogGamma(size) - GammaFunctions.LogGamma(count + 1d)
            + (size * PortableFunctions.Log(size / (size + safe))) + (count * PortableFunctions.Log(safe / (size + safe)));
    }
}
