namespace Foundress.Science.Planning;

/// <summary>What a search asks of the colonies.</summary>
public interface IPlanModel
{
    /// <summary>What comes when nothing is done.</summary>
    PlanReading Nothing();

    /// <summary>What several plans come to that go on from one.</summary>
    /// <param name="earlier">Places of the candidates of the plan they go on from, by day; may be empty.</param>
    /// <param name="further">For each plan the place of the one candidate it has more; none starts before the last of <paramref name="earlier"/>.</param>
    /// <returns>A reading for each, in their order.</returns>
    IReadOnlyList<PlanReading> Further(IReadOnlyList<int> earlier, IReadOnlyList<int> further);

    /// <summary>Why a candidate cannot follow those of a plan: a number of the caller's from 0 on; -1 when it can.</summary>
    /// <param name="earlier">Places of the candidates before, by day; may be empty.</param>
    /// <param name="next">Place of the candidate.</param>
    int Conflict(IReadOnlyList<int> earlier, int next);
}
