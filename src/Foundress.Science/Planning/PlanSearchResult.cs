namespace Foundress.Science.Planning;

/// <summary>What a search found.</summary>
/// <param name="Outcomes">Every plan worked out, the empty one first; fewer controls first.</param>
/// <param name="Tally">What became of all plans.</param>
public sealed record PlanSearchResult(IReadOnlyList<PlanOutcome> Outcomes, PlanTally Tally)
{
    /// <summary>The plan with nothing in it.</summary>
    public PlanOutcome Nothing => Outcomes[0];

    /// <summary>The plans within the tolerance.</summary>
    public IEnumerable<PlanOutcome> Holding => Outcomes.Where(outcome => outcome.Reading.Holds);

    /// <summary>The fewest controls with which the tolerance is kept; null when it is kept by no plan.</summary>
    public int? Fewest => Holding.Select(outcome => (int?)outcome.Weight.Controls).Min();

    /// <summary>The plans that no other is better than in every respect: chance, number, hazard, work and cost.</summary>
    public IReadOnlyList<PlanOutcome> Front() =>
        [.. Outcomes.Where(outcome => !Outcomes.Any(outcome.IsBeatenBy))];
}
