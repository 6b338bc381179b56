using Foundress.Book.Judging;

namespace Foundress.Cli.Output;

/// <summary>The level if the method found the share that one source reports. Shown, not used.</summary>
internal sealed record CorrectedOutput(double Share, double Level, double Lower, double Upper, string Source, string Conditions)
{
    internal static CorrectedOutput Of(CorrectedLevel level) => new(
        level.Recovery.Share.Value / 100, level.Level.Per100Bees, level.Interval.Lower.Per100Bees, level.Interval.Upper.Per100Bees,
        level.Recovery.Share.Source.Text, level.Recovery.Conditions);
}
