using Foundress.Science.Estimation;

namespace Foundress.Cli.Output;

/// <summary>What a jar says of the level, as a distribution; in mites per 100 bees.</summary>
internal sealed record PosteriorOutput(double Mean, double Median, double Lower, double Upper, double Confidence)
{
    internal static PosteriorOutput Of(LevelPosterior posterior, double confidence)
    {
        var interval = posterior.Interval(confidence);
        return new PosteriorOutput(posterior.Mean.Per100Bees, posterior.Median.Per100Bees, interval.Lower.Per100Bees, interval.Upper.Per100Bees, confidence);
    }
}
