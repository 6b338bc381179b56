namespace Foundress.Science.Planning;

/// <summary>What a plan asks of the keeper. Every part only grows when a control is added.</summary>
/// <param name="Controls">How many controls.</param>
/// <param name="WorstHazard">The hazard of the most hazardous among them.</param>
/// <param name="Hazard">The hazards together.</param>
/// <param name="Labour">The work together.</param>
/// <param name="Cost">The cost together.</param>
/// <param name="NonChemical">True when none of them is a substance.</param>
public readonly record struct PlanWeight(int Controls, double WorstHazard, double Hazard, double Labour, double Cost, bool NonChemical)
{
    /// <summary>The plan with nothing in it.</summary>
    public static PlanWeight Nothing { get; } = new(0, 0d, 0d, 0d, 0d, true);

    /// <summary>The weight with one control more.</summary>
    public PlanWeight With(PlanCandidate control) => new(
        Controls + 1, Math.Max(WorstHazard, control.Hazard), Hazard + control.Hazard, Labour + control.Labour, Cost + control.Cost, NonChemical && control.NonChemical);

    /// <summary>Whether this is no heavier than another in any respect, and without chemicals where the other is.</summary>
    public bool AtMost(PlanWeight other) =>
        Controls <= other.Controls && WorstHazard <= other.WorstHazard && Hazard <= other.Hazard && Labour <= other.Labour && Cost <= other.Cost
        && (NonChemical || !other.NonChemical);
}
