using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Book.Forecasts;

/// <summary>A colony's bees and brood by the book: what was recorded of it, in numbers, and the course that follows.</summary>
/// <param name="Season">The bees' year at its apiary.</param>
/// <param name="Sightings">Its inspections with frames, by day.</param>
/// <param name="Events">What changed its queen, bees or brood, by day.</param>
/// <param name="Course">The course.</param>
public sealed record ColonyBees(BroodSeason Season, IReadOnlyList<BeeSighting> Sightings, IReadOnlyList<BeeEvent> Events, BeeCourse Course)
{
    /// <summary>The bees of a colony.</summary>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">What is known of bees and climates.</param>
    /// <param name="colony">The colony.</param>
    /// <param name="from">First day of the course.</param>
    /// <param name="to">Last day.</param>
    /// <param name="asOf">What was recorded of later days is passed over; null for <paramref name="to"/>.</param>
    /// <exception cref="ArgumentException">The colony is not in the book, or the course is empty or too long.</exception>
    public static ColonyBees Of(BookState state, KnowledgeBase knowledge, ColonyId colony, DateOnly from, DateOnly to, DateOnly? asOf = null) =>
        Of(state, new BroodSeasons(knowledge), colony, from, to, asOf);

    /// <summary>The bees of a colony, with seasons that are kept for the other colonies.</summary>
    /// <param name="state">The book.</param>
    /// <param name="seasons">The bees' years made so far.</param>
    /// <param name="colony">The colony.</param>
    /// <param name="from">First day of the course.</param>
    /// <param name="to">Last day.</param>
    /// <param name="asOf">What was recorded of later days is passed over; null for <paramref name="to"/>.</param>
    /// <exception cref="ArgumentException">The colony is not in the book, or the course is empty or too long.</exception>
    public static ColonyBees Of(BookState state, BroodSeasons seasons, ColonyId colony, DateOnly from, DateOnly to, DateOnly? asOf = null) =>
        new HiveReckoner(state, seasons).Bees(colony, from, to, asOf ?? to);
}
