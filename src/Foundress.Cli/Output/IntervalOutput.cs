using Foundress.Science.Estimation;

namespace Foundress.Cli.Output;

/// <summary>An interval around a level, in mites per 100 bees.</summary>
internal sealed record IntervalOutput(double Lower, double Upper, IntervalMethod Method, double Confidence)
{
    internal static IntervalOutput Of(LevelInterval interval) =>
        new(interval.Lower.Per100Bees, interval.Upper.Per100Bees, interval.Method, interval.Confidence);
}
