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
            reasons.Missing(Ground.Brood, $"Not known: enter the frames of brood; at least {least.Value:0} are wanted.", least.Source.Text);
        else if (frames < least.Value)
            reasons.Against(Ground.Brood, $"The weakest colony has {frames:0.#} frames of brood; at least {least.Value:0} are wanted.", least.Source.Text);
    }

    private static void Check(Requirement requirement, Situation situation, DateOnly end, Reasons reasons)
    {
        var source = requirement.Source.Text;
        switch (requirement.Need)
        {
            case ControlNeed.Broodless:
                Judge(requirement, Ground.Brood, situation.Brood is { } brood ? brood == BroodState.None : null, "There is sealed brood.", "enter whether there is sealed brood", reasons);
                break;
            case ControlNeed.Brood:
                Judge(requirement, Ground.Brood, situation.Brood is { } some ? some == BroodState.Some : null, "There is no brood.", "enter whether there is brood", reasons);
                break;
            case ControlNeed.DroneBrood:
                Judge(requirement, Ground.Brood, situation.DroneBrood, "No drones are reared at this time of the year.", "look whether drones are still reared", reasons);
                break;
            case ControlNeed.Cluster:
                Judge(requirement, Ground.Cluster, situation.InCluster, "The bees are not in the winter cluster.", string.Empty, reasons);
                break;
            case ControlNeed.ActiveBees:
                if (situation.InCluster)
                    reasons.Against(Ground.Cluster, $"The bees are in the winter cluster by the season of this apiary. {requirement.Text}", source);
                else if (situation.ClusterFrom is { } cluster && end > cluster)
                    reasons.Against(Ground.Cluster, $"The bees cluster from about {Say.Day(cluster)}, before it would be over on {Say.Day(end)}. {requirement.Text}", source);
                break;
            case ControlNeed.Queen:
                reasons.Note(requirement.Text);
                break;
        }
    }

    private static void Judge(Requirement requirement, Ground ground, bool? holds, string not, string enter, Reasons reasons)
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
            reasons.Missing(ground, $"Not known: {enter}. {requirement.Text}", requirement.Source.Text);
        }
    }
}
