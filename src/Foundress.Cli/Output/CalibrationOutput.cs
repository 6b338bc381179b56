using Foundress.Book.Calibrating;

namespace Foundress.Cli.Output;

/// <summary>What one person's counted jars of one measure teach. Numbers of bees, but for the log spreads; the interval is that of the usual jar.</summary>
internal sealed record CalibrationOutput(
    string Observer,
    string Measure,
    IReadOnlyList<int> Counted,
    double SaidBees,
    double SaidLogSpread,
    double UsualBees,
    double UsualLower,
    double UsualUpper,
    double LogSpread,
    double NextLower,
    double NextUpper,
    double NextLogSpread,
    double NextLogSpreadAfterMore,
    double Confidence,
    CalibrationUse Use,
    IReadOnlyList<GainOutput> Examples)
{
    internal static CalibrationOutput Of(TaughtScoop scoop, double confidence, IReadOnlyList<CountingGain> gains)
    {
        var (taught, tail) = (scoop.Calibration, (1 - confidence) / 2);
        return new CalibrationOutput(
            scoop.Observer, scoop.Measure, scoop.Counted, taught.Prior.Bees, taught.Prior.LogSpread,
            taught.UsualBees, taught.UsualBeesQuantile(tail), taught.UsualBeesQuantile(1 - tail), taught.LogSpread,
            taught.NextJarQuantile(tail), taught.NextJarQuantile(1 - tail), taught.ExpectedLogSpreadAfter(0), taught.ExpectedLogSpreadAfter(CountingGain.More),
            confidence, scoop.Use, [.. gains.Select(GainOutput.Of)]);
    }
}
