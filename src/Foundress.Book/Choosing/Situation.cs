using Foundress.Book.Proving;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Choosing;
using Foundress.Science.Judging;

namespace Foundress.Book.Choosing;

/// <summary>What decides which controls are workable on a day. What is not known is null, and asked for rather than guessed.</summary>
/// <param name="Start">The day the control would start.</param>
/// <param name="Phase">Where the colonies stand in their year then.</param>
/// <param name="Temperatures">The weather to reckon with.</param>
/// <param name="SupersOn">Whether supers with honey for people are on.</param>
/// <param name="SupersDue">The day supers are to go on next.</param>
/// <param name="HarvestOn">The day supers come off.</param>
/// <param name="Brood">Whether there is sealed brood.</param>
/// <param name="BroodFrames">Frames of brood.</param>
/// <param name="ClusterFrom">The day from which the bees sit in the winter cluster.</param>
/// <param name="Jurisdiction">Whose law the labels follow.</param>
/// <param name="CertifiedOrganic">Whether the colonies are certified organic.</param>
/// <param name="Gear">Ids of the gear the keeper has.</param>
/// <param name="Courses">Controls of these colonies so far.</param>
/// <param name="Clustered">Whether the bees were seen in the winter cluster; null leaves it to the season.</param>
/// <param name="Reduced">Groups that showed a reduced effect in this apiary.</param>
public sealed record Situation(
    DateOnly Start,
    SeasonPhase Phase,
    ITemperatures? Temperatures = null,
    bool? SupersOn = null,
    DateOnly? SupersDue = null,
    DateOnly? HarvestOn = null,
    BroodState? Brood = null,
    double? BroodFrames = null,
    DateOnly? ClusterFrom = null,
    Jurisdiction? Jurisdiction = null,
    bool? CertifiedOrganic = null,
    IReadOnlyCollection<string>? Gear = null,
    IReadOnlyList<Course>? Courses = null,
    bool? Clustered = null,
    IReadOnlyList<ReducedEffect>? Reduced = null)
{
    /// <summary>Whether the bees sit in the winter cluster on the first day: as seen, else by the season of the apiary.</summary>
    public bool InCluster => Clustered ?? Phase.IsDormant();

    /// <summary>Whether drones are reared, by the season of the apiary; null when the season does not say.</summary>
    public bool? DroneBrood => Phase switch
    {
        SeasonPhase.Increase or SeasonPhase.Peak => true,
        SeasonPhase.Decrease => null,
        _ => false,
    };
}
