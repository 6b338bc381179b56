namespace Foundress.Science.Planning;

/// <summary>A plan and what it comes to.</summary>
/// <param name="Plan">Places of its candidates, by day.</param>
/// <param name="Reading">What it comes to.</param>
/// <param name="Weight">What it asks.</param>
public sealed record PlanOutcome(IReadOnlyList<int> Plan, PlanReading Reading, PlanWeight Weight)
{
    /// <summary>Whether another plan is at least as good in every respect and better in one.</summary>
    public bool IsBeatenBy(PlanOutcome other) =>
        other.Weight.AtMost(Weight) && other.Reading.Peak <= Reading.Peak && (other.Weight != Weight || other.Reading.Peak < Reading.Peak);
}
