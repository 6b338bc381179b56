namespace Foundress.Science.Dynamics.Bees;

/// <summary>What left a colony on a day, as shares of what it had: whatever sits on or in it leaves in the same shares.</summary>
/// <param name="Day">The day, from the first of the course.</param>
/// <param name="Adults">Share of the adult bees, 0 to 1.</param>
/// <param name="WorkerBrood">Share of the worker brood, 0 to 1.</param>
/// <param name="DroneBrood">Share of the drone brood, 0 to 1.</param>
public readonly record struct BeesTaken(int Day, double Adults, double WorkerBrood, double DroneBrood);
