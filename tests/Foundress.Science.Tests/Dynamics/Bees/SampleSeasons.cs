using Foundress.Science.Dynamics.Bees;

namespace Foundress.Science.Tests.Dynamics.Bees;

/// <summary>A year to reckon with: made up, near a temperate one. What is shipped is tested where it lies.</summary>
internal static class SampleSeasons
{
    internal static readonly BeeLives Lives = new()
    {
        WorkerOpenDays = 9,
        WorkerSealedDays = 12,
        DroneOpenDays = 10,
        DroneSealedDays = 14,
        SealedShare = 0.85,
        HalfLayingBees = 8000,
        SpringPerDegree = 4,
        AutumnPerDegree = 2,
        MetresPerDegree = 122,
        MostDegrees = 9,
        AdultSpread = 0.4,
        BroodSpread = 0.4,
        AdultMemory = 60,
        BroodMemory = 40,
    };

    internal static readonly QueenTimes Queens = new()
    {
        Raised = 27,
        AfterSwarm = 20,
        AfterHiving = 5,
        AfterRelease = 1,
        Caged = 24,
        ToFull = 7,
        ToMating = 21,
        DroneRipening = 12,
        SwarmShare = 0.6,
        UnseenSpread = 0.5,
    };

    internal static readonly BroodClimate Climate = new()
    {
        Degrees = 47,
        Laying = new(32, 112, 150, 280),
        PeakLaying = 2000,
        Flight = new(70, 120, 215, 285),
        SummerLife = 23,
        WinterLoss = 0.003,
        Drones = new(75, 115, 165, 215),
        DroneShare = 0.04,
    };

    internal static readonly BroodSeason North = new(Climate, Lives, Queens, new Site(Hemisphere.North));

    internal static readonly BroodSeason South = new(Climate, Lives, Queens, new Site(Hemisphere.South));

    internal static BeeCourse Course(DateOnly from, DateOnly to, params BeeEvent[] events) => BeeCourses.Of(North, [], events, from, to);

    internal static BeeCourse Seen(DateOnly from, DateOnly to, params BeeSighting[] sightings) => BeeCourses.Of(North, sightings, [], from, to);
}
