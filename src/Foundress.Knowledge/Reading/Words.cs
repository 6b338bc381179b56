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

    public static readonly IReadOnlyDictionary<string, ControlKind> ControlKinds = new Dictionary<string, ControlKind>(StringComparer.Ordinal)
    {
        ["synthetic"] = ControlKind.Synthetic,
        ["natural"] = ControlKind.Natural,
        ["non-chemical"] = ControlKind.NonChemical,
    };

    public static readonly IReadOnlyDictionary<string, ControlForm> ControlForms = new Dictionary<string, ControlForm>(StringComparer.Ordinal)
    {
        ["strips"] = ControlForm.Strips,
        ["evaporator"] = ControlForm.Evaporator,
        ["trickle"] = ControlForm.Trickle,
        ["vapour"] = ControlForm.Vapour,
        ["spray"] = ControlForm.Spray,
        ["other"] = ControlForm.Other,
        ["husbandry"] = ControlForm.Husbandry,
    };

    public static readonly IReadOnlyDictionary<string, BroodReach> BroodReaches = new Dictionary<string, BroodReach>(StringComparer.Ordinal)
    {
        ["none"] = BroodReach.None,
        ["limited"] = BroodReach.Limited,
        ["yes"] = BroodReach.Yes,
    };

    public static readonly IReadOnlyDictionary<string, ControlAction> ControlActions = new Dictionary<string, ControlAction>(StringComparer.Ordinal)
    {
        ["kill"] = ControlAction.Kill,
        ["remove-drone-brood"] = ControlAction.RemoveDroneBrood,
        ["remove-brood"] = ControlAction.RemoveBrood,
        ["stop-laying"] = ControlAction.StopLaying,
        ["split"] = ControlAction.Split,
        ["requeen"] = ControlAction.Requeen,
    };

    public static readonly IReadOnlyDictionary<string, ControlNeed> ControlNeeds = new Dictionary<string, ControlNeed>(StringComparer.Ordinal)
    {
        ["broodless"] = ControlNeed.Broodless,
        ["cluster"] = ControlNeed.Cluster,
        ["brood"] = ControlNeed.Brood,
        ["drone-brood"] = ControlNeed.DroneBrood,
        ["queen"] = ControlNeed.Queen,
        ["active-bees"] = ControlNeed.ActiveBees,
    };

    public static readonly IReadOnlyDictionary<string, DayTemperature> DayTemperatures = new Dictionary<string, DayTemperature>(StringComparer.Ordinal)
    {
        ["daily-minimum"] = DayTemperature.Minimum,
        ["daily-mean"] = DayTemperature.Mean,
        ["daily-maximum"] = DayTemperature.Maximum,
    };

    /// <summary>True for a least temperature.</summary>
    public static readonly IReadOnlyDictionary<string, bool> Bounds = new Dictionary<string, bool>(StringComparer.Ordinal)
    {
        ["at-least"] = true,
        ["at-most"] = false,
    };

    public static readonly IReadOnlyDictionary<string, Jurisdiction> Jurisdictions = new Dictionary<string, Jurisdiction>(StringComparer.Ordinal)
    {
        ["eu"] = Jurisdiction.EuropeanUnion,
        ["uk"] = Jurisdiction.UnitedKingdom,
        ["us"] = Jurisdiction.UnitedStates,
        ["canada"] = Jurisdiction.Canada,
        ["new-zealand"] = Jurisdiction.NewZealand,
        ["australia"] = Jurisdiction.Australia,
    };

    public static readonly IReadOnlyDictionary<string, SuperRule> SuperRules = new Dictionary<string, SuperRule>(StringComparer.Ordinal)
    {
        ["see-label"] = SuperRule.SeeLabel,
        ["not-on"] = SuperRule.NotOn,
        ["may-be-on"] = SuperRule.MayBeOn,
    };

    public static readonly IReadOnlyDictionary<string, OrganicUse> OrganicUses = new Dictionary<string, OrganicUse>(StringComparer.Ordinal)
    {
        ["allowed"] = OrganicUse.Allowed,
        ["not-allowed"] = OrganicUse.NotAllowed,
        ["ask-certifier"] = OrganicUse.AskCertifier,
    };

    public static readonly IReadOnlyDictionary<string, FallBrood> Brood = new Dictionary<string, FallBrood>(StringComparer.Ordinal)
    {
        ["with"] = FallBrood.With,
        ["without"] = FallBrood.Without,
        ["any"] = FallBrood.Any,
    };
}
