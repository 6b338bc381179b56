using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>Counts that vary more between colonies than chance alone would make them: the negative binomial distribution.</summary>
public static class ClumpedCounts
{
    private const double Golden = 0.61803398874989484820;

    /// <summary>ln of the negative binomial chance of a count.</summary>
    /// <param name="mites">Mites counted, 0 or more.</param>
    /// <param name="mean">Expected mites, above 0.</param>
    /// <param name="shape">Shape k, above 0: the smaller, the more clumped.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static double LogMass(int mites, double mean, double shape)
    {
        if (mites < 0)
            throw new ArgumentOutOfRangeException(nameof(mites), mites, "The number of mites counted is 0 or more.");
        if (!(mean > 0d) || !double.IsFinite(mean))
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "The expected number of mites is a finite number above 0.");
        if (!(shape > 0d) || !double.IsFinite(shape))
            throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape k is a finite number above 0.");

        // y ln(mean/(mean + k)) - k ln(1 + mean/k) + ln of the binomial coefficient.
        double coefficient = mites == 0 ? 0d : -Math.Log(mites + shape) - (GammaFunctions.LogGamma(mites + 1d) + GammaFunctions.LogGamma(shape) - GammaFunctions.LogGamma(mites + shape + 1d));
        return coefficient - (mites * ElementaryFunctions.Log1P(shape / mean)) - (shape * ElementaryFunctions.Log1P(mean / shape));
    }

    /// <summary>The mean level and shape that make the jars most likely: the mode of the posterior under flat priors of both.</summary>
    /// <param name="sampled">At least two colonies with at least one mite among them.</param>
    /// <exception cref="ArgumentException">There are fewer than two colonies, a name occurs twice, or no mite was found.</exception>
    public static ClumpedFit MostLikely(IReadOnlyList<ColonyJars> sampled)
    {
        PooledExposure[] pooled = ApiaryPosterior.Pool(ApiaryPosterior.CheckColonies(sampled, 0));
        if (pooled.Length < 2)
            throw new ArgumentException("The spread between colonies cannot be fitted to one colony: give at least two.", nameof(sampled));
        if (pooled.All(colony => colony.Mites == 0))
            throw new ArgumentException("No mite was found in any jar, so no level is the most likely one: use the posterior, which gives an upper limit.", nameof(sampled));

        var likelihood = new ApiaryLikelihood(pooled);
        double at = ApiaryPosterior.Start(pooled);
        double Profile(double logSpread)
        {
            likelihood.SetSpread(Math.Exp(logSpread));
            double top = MeanPeak.Find(likelihood.Log, at, 0.25);
            at = Maximise(likelihood.Log, top - 0.2, top + 0.2);
            return likelihood.Log(at);
        }

        // The profile has one peak, or falls all the way from equal colonies (spread 0).
        double coarse = MeanPeak.Find(Profile, 0d, 0.5, Math.Log(ClumpedFit.SmallestSpread), Math.Log(ApiaryPrior.WidestSpread));
        double logSpread = Maximise(Profile, Math.Max(Math.Log(ClumpedFit.SmallestSpread), coarse - 0.4), Math.Min(Math.Log(ApiaryPrior.WidestSpread), coarse + 0.4));
        double height = Profile(logSpread);
        return new(MiteLevel.FromPerBee(Math.Exp(at)), Math.Exp(logSpread), height);
    }

    private static double Maximise(Func<double, double> f, double low, double high)
    {
        double left = high - (Golden * (high - low));
        double right = low + (Golden * (high - low));
        double atLeft = f(left);
        double atRight = f(right);
        while (high - low > 1e-9)
        {
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - (Golden * (high - low));
                atLeft = f(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + (Golden * (high - low));
                atRight = f(right);
            }
        }

        return 0.5 * (low + high);
    }
}
