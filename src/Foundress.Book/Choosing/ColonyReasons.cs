using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Choosing;

/// <summary>What brood, cluster and queen say of a control.</summary>
internal static class ColonyReasons
{
    internal static void Find(ControlAgent agent, Situation situation, DateOnly end, Reasons reasons)
    {
        foreach (var requirement in agent.Requirements)
            Check(requirement, situation, end, reasons);
        if (agent.LeastBroodFrames is not { } least)
            return;
        if (situation.BroodFrames is not { } frames)
            reasons.Missing(Ground.Brood, ChoosingTexts.FormatBroodFramesUnknown(Whole(least.Value)), least.Source.Text);
        else if (frames < least.Value)
            reasons.Against(Ground.Brood, ChoosingTexts.FormatBroodFramesTooFew(frames.ToString("0.#", CultureInfo.CurrentCulture), Whole(least.Value)), least.Source.Text);
    }

    private static void Check(Requirement requirement, Situation situation, DateOnly end, Reasons reasons)
    {
        var source = requirement.Source.Text;
        switch (requirement.Need)
        {
            case ControlNeed.Broodless:
                Judge(requirement, Ground.Brood, situation.Brood is { } brood ? brood == BroodState.None : null, ChoosingTexts.SealedBrood, ChoosingTexts.SealedBroodUnknown, reasons);
                break;
            case ControlNeed.Brood:
                Judge(requirement, Ground.Brood, situation.Brood is { } some ? some == BroodState.Some : null, ChoosingTexts.NoBrood, ChoosingTexts.BroodUnknown, reasons);
                break;
            case ControlNeed.DroneBrood:
                Judge(requirement, Ground.Brood, situation.DroneBrood, ChoosingTexts.NoDrones, ChoosingTexts.DronesUnknown, reasons);
                break;
            case ControlNeed.Cluster:
                Judge(requirement, Ground.Cluster, situation.InCluster, ChoosingTexts.NotClustered, string.Empty, reasons);
                break;
            case ControlNeed.ActiveBees:
                if (situation.InCluster)
                    reasons.Against(Ground.Cluster, $"{ChoosingTexts.ClusteredBySeason} {requirement.Text}", source);
                else if (situation.ClusterFrom is { } cluster && end > cluster)
                    reasons.Against(Ground.Cluster, $"{ChoosingTexts.FormatClustersBeforeOver(Say.Day(cluster), Say.Day(end))} {requirement.Text}", source);
                break;
            case ControlNeed.Queen:
                reasons.Note(requirement.Text);
                break;
        }
    }

    private static void Judge(Requirement requirement, Ground ground, bool? holds, string not, string unknown, Reasons reasons)
    {
        if (holds == true)
            return;
        if (!requirement.IsStrict)
        {
            if (holds == false)
                reasons.Note($"{not} {requirement.Text}");
        }
        else if (holds == false)
        {
            reasons.Against(ground, $"{not} {requirement.Text}", requirement.Source.Text);
        }
        else
        {
            reasons.Missing(ground, $"{unknown} {requirement.Text}", requirement.Source.Text);
        }
    }

    private static string Whole(double value) => value.ToString("0", CultureInfo.CurrentCulture);
}
