using Foundress.Science.Sampling;

namespace Foundress.Cli.Output;

/// <summary>How rounds end at a true level: chances from 0 to 1.</summary>
internal sealed record ChartEnd(double Level, double Wait, double Act, double AverageJars)
{
    internal static ChartEnd Of(double level, SequentialOutcome outcome) => new(level, outcome.Wait.Value, outcome.Act.Value, outcome.AverageJars);
}
