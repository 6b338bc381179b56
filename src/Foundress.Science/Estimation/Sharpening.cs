using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// How much narrower the interval around a level would get, on average over what may come, if the bees were counted or
/// another jar of the same size were taken. All widths are of the equal-tailed posterior interval, in mites per 100 bees.
/// </summary>
/// <param name="WidthNow">Width with the jar as it is.</param>
/// <param name="WidthIfCounted">Expected width if the jar's bees were counted; null when they are.</param>
/// <param name="WidthWithAnotherJar">Expected width with another jar of the same size and the same kind of bee count.</param>
public sealed record Sharpening(double WidthNow, double? WidthIfCounted, double WidthWithAnotherJar)
{
    // Equal slices of the second jar's predicted count; their middles stand for the whole.
    private const int Slices = 16;

    /// <summary>What would sharpen a jar's level.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="confidence">Two-sided, above 0 and below 1.</param>
    /// <remarks>
    /// Counted: the width is (a difference of gamma quantiles) / bees, whose mean over the lognormal bees is exact. Another
    /// jar: mean over 16 equally likely values of its count, negative binomial given the first; a planning figure, within
    /// 2 per cent of the full sum.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public static Sharpening Of(JarCount jar, double confidence)
    {
        double tail = CountIntervals.Tail(confidence);
        double spread = jar.Bees.LogSpread;
        double shape = jar.Mites + 0.5;
        double? counted = null;
        if (spread > 0d)
        {
            double width = GammaFunctions.InverseUpper(shape, tail) - GammaFunctions.InverseLower(shape, tail);
            counted = 100d * width / jar.Exposure * Math.Exp(spread * spread);
        }

        double now = LevelPosterior.FromJars([jar]).Interval(confidence).Width;
        double sum = 0d;
        int mites = 0;
        double reached = Predicted(shape, mites);
        for (int slice = 0; slice < Slices; slice++)
        {
            while (reached < (slice + 0.5) / Slices)
                reached += Predicted(shape, ++mites);
            sum += LevelPosterior.FromJars([jar, new JarCount(mites, jar.Bees, jar.Recovery)]).Interval(confidence).Width;
        }

        return new(now, counted, sum / Slices);
    }

    // The second count given the first, both jars of one size: negative binomial of this shape with success chance one half.
    private static double Predicted(double shape, int count) =>
        Math.Exp(GammaFunctions.LogGamma(shape + count) - GammaFunctions.LogGamma(shape) - GammaFunctions.LogGamma(count + 1d) - ((shape + count) * Math.Log(2d)));
}
