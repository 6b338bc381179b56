using Foundress.Book.Choosing;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Planning;

/// <summary>The situation of colonies on a day that may lie ahead: what the book knows, and what the keeper expects of supers.</summary>
public static class PlanSituations
{
    /// <summary>The situation on a day.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="colonies">The colonies to be controlled; at least one.</param>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">Climates.</param>
    /// <param name="on">The day.</param>
    /// <param name="options">When supers come off and go on, and what the keeper says of the colonies.</param>
    /// <param name="brood">Whether sealed brood is expected; used where no inspection of the last weeks says.</param>
    public static Situation On(
        Apiary apiary, IReadOnlyCollection<ColonyId> colonies, BookState state, KnowledgeBase knowledge, DateOnly on, PlanOptions options, BroodState? brood = null)
    {
        ArgumentNullException.ThrowIfNull(options);
        var known = Situations.Of(apiary, colonies, state, knowledge, on);
        if (options.Said is { } said && said.HoldsOn(on))
            known = known with { SupersOn = said.SupersOn ?? known.SupersOn, Brood = said.Brood ?? known.Brood, Clustered = said.Clustered ?? known.Clustered };
        return known with
        {
            Brood = known.Brood ?? brood,
            SupersOn = Supers(known.SupersOn, on, options.HarvestOn ?? known.HarvestOn, options.SupersDue ?? known.SupersDue),
            SupersDue = options.SupersDue ?? known.SupersDue,
            HarvestOn = options.HarvestOn ?? known.HarvestOn,
        };
    }

    private static bool? Supers(bool? known, DateOnly on, DateOnly? harvest, DateOnly? due)
    {
        var off = on >= harvest ? harvest : null;
        var back = on >= due ? due : null;
        // Of the two days the later one holds.
        return (off, back) switch
        {
            (null, null) => known,
            ({ } o, { } b) => b > o,
            (null, _) => true,
            _ => false,
        };
    }
}
