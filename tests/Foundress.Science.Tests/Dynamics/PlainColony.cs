using Foundress.Science.Dynamics;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Science.Tests.Dynamics;

/// <summary>Plain figures and courses for tests of the mites: round numbers, not knowledge.</summary>
internal static class PlainColony
{
    public static readonly MiteBiology Biology = new()
    {
        WorkerOffspring = 0.9, DroneOffspring = 2, MotherReturn = 0.55, EmergenceLoss = 0.2, WorkerCrowding = 0.15, DroneCrowding = 0.18,
        InvasionScale = 0.65, WorkerInvasion = 0.56, DroneInvasion = 6.49, BeeGrams = 0.125, DeathWithBrood = 0.004, DeathBroodless = 0.0025,
        LoadHazard = 0.03, InfestedLoss = 0.49, HalfLayingBees = 8000, WeeklySpread = 0.12, WeeklyMemory = 0.8, ControlWeeklySpread = 0.5, BeesWeeklySpread = 0.35,
        LateInflowStart = 205, LateInflowEnd = 320,
    };

    /// <summary>A course of even days.</summary>
    public static BeeCourse Even(int days, float adults, float workers, float drones, DateOnly? first = null)
    {
        float[] Full(float value) => [.. Enumerable.Repeat(value, days)];
        return new(first ?? new DateOnly(2025, 4, 1), Full(adults), Full(workers), Full(drones), Full(0.2f), Full(0.25f));
    }

    public static ColonyDays Days(BeeCourse bees, MiteBiology? biology = null, params ControlEffect[] controls) =>
        ColonyDays.Of(bees, biology ?? Biology, Hemisphere.North, controls, []);

    /// <summary>An ensemble of like colonies.</summary>
    public static MiteEnsemble Start(ColonyDays days, int particles, float onAdults, float inflow = 0f, float lateInflow = 0f)
    {
        MiteEnsemble ensemble = new(particles, days.Controls.Length);
        float[] mites = new float[particles];
        Array.Fill(mites, onAdults);
        ensemble.Inflow.Fill(inflow);
        ensemble.LateInflow.Fill(lateInflow);
        ensemble.Start(days, 0, mites, new float[particles]);
        return ensemble;
    }

    public static double Total(MiteEnsemble ensemble, int particle) =>
        ensemble.OnAdults[particle] + ensemble.InWorkerCells(particle) + ensemble.InDroneCells(particle);

    public static double MeanTotal(MiteEnsemble ensemble) => Enumerable.Range(0, ensemble.Particles).Average(i => Total(ensemble, i));
}
