using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>Picks from all plans of a search those that are worked out again with all colonies and all particles.</summary>
internal static class PlanFinalists
{
    // A plan this far under the tolerance in the search mostly stays under it in the end.
    private const double Margin = 0.85;

    internal static IReadOnlyList<PlanOutcome> Pick(PlanSearchResult result, IReadOnlyList<PlanUse> uses, double tolerance, bool costs)
    {
        // Of the same controls on other days one is enough: it acts early, and with some room under the tolerance.
        PlanOutcome[] each = [.. result.Outcomes
            .Where(outcome => outcome.Plan.Count > 0)
            .GroupBy(outcome => string.Join(' ', outcome.Plan.Select(place => uses[place].Candidate.Control).Order()), StringComparer.Ordinal)
            .SelectMany(group => Best(group, uses, tolerance))];
        PlanOutcome[] holding = [.. each.Where(outcome => outcome.Reading.Holds)];
        var picked = new List<PlanOutcome>();
        void Take(IEnumerable<PlanOutcome> from, int most) => picked.AddRange(from.Where(outcome => !picked.Contains(outcome)).Take(most));
        Take(holding.OrderBy(one => PlanOrder.Fewest(one.Weight, one.Reading)), 3);
        HashSet<int> first = [.. picked.Take(1).SelectMany(one => one.Plan).Select(place => uses[place].Candidate.Control)];
        Take(holding.Where(one => !one.Plan.Any(place => first.Contains(uses[place].Candidate.Control))).OrderBy(one => PlanOrder.Fewest(one.Weight, one.Reading)), 1);
        Take(holding.OrderBy(one => PlanOrder.Gentlest(one.Weight, one.Reading)), 2);
        Take(holding.OrderBy(one => PlanOrder.LeastWork(one.Weight, one.Reading)), 2);
        if (costs)
            Take(holding.OrderBy(one => PlanOrder.Cheapest(one.Weight, one.Reading)), 1);
        Take(holding.Where(one => one.Weight.NonChemical).OrderBy(one => one.Weight.Controls).ThenBy(one => one.Weight.Labour).ThenBy(one => one.Reading.Peak), 1);
        Take(each.Where(one => one.Weight.NonChemical).OrderBy(one => PlanOrder.Surest(one.Weight, one.Reading)), holding.Any(one => one.Weight.NonChemical) ? 0 : 2);
        Take(each.OrderBy(one => PlanOrder.Surest(one.Weight, one.Reading)), holding.Length > 0 ? 1 : 4);
        return picked;
    }

    private static IEnumerable<PlanOutcome> Best(IEnumerable<PlanOutcome> group, IReadOnlyList<PlanUse> uses, double tolerance)
    {
        PlanOutcome[] all = [.. group];
        PlanOutcome[] easy = [.. all.Where(outcome => outcome.Reading.Peak <= Margin * tolerance)];
        yield return easy.Length > 0
            ? easy.OrderBy(outcome => outcome.Plan.Sum(place => uses[place].Offer.Missing.Count)).ThenBy(outcome => outcome.Reading.DaysOver).First()
            : all.MinBy(outcome => outcome.Reading.Peak)!;
    }
}
