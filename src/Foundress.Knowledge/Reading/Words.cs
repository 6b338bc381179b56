using Foundress.Science;
using Foundress.Science.Judging;
using Foundress.Science.Sampling;

namespace Foundress.Knowledge;

/// <summary>How the closed sets are written in the data files.</summary>
internal static class Words
{
    public static readonly IReadOnlyDictionary<string, SourceStatus> Statuses = new Dictionary<string, SourceStatus>(StringComparer.Ordinal)
    {
        ["seen"] = SourceStatus.Seen,
        ["second-hand"] = SourceStatus.SecondHand,
        ["from memory"] = SourceStatus.FromMemory,
        ["derived"] = SourceStatus.Derived,
        ["common practice"] = SourceStatus.CommonPractice,
        ["product choice"] = SourceStatus.ProductChoice,
    };

    public static readonly IReadOnlyDictionary<string, SeasonPhase> Phases = new Dictionary<string, SeasonPhase>(StringComparer.Ordinal)
    {
        ["dormant-broodless"] = SeasonPhase.DormantBroodless,
        ["dormant-with-brood"] = SeasonPhase.DormantWithBrood,
        ["increase"] = SeasonPhase.Increase,
        ["peak"] = SeasonPhase.Peak,
        ["decrease"] = SeasonPhase.Decrease,
    };

    public static readonly IReadOnlyDictionary<string, PhasePoint> Points = new Dictionary<string, PhasePoint>(StringComparer.Ordinal)
    {
        ["start"] = PhasePoint.Start,
        ["middle"] = PhasePoint.Middle,
        ["end"] = PhasePoint.End,
    };

    public static readonly IReadOnlyDictionary<string, Hemisphere> Hemispheres = new Dictionary<string, Hemisphere>(StringComparer.Ordinal)
    {
        ["north"] = Hemisphere.North,
        ["south"] = Hemisphere.South,
    };

    public static readonly IReadOnlyDictionary<string, FallBrood> Brood = new Dictionary<string, FallBrood>(StringComparer.Ordinal)
    {
        ["with"] = FallBrood.With,
        ["without"] = FallBrood.Without,
        ["any"] = FallBrood.Any,
    };
}
