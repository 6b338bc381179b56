using Foundress.Book.Journal;

namespace Foundress.Book.Planning;

/// <summary>What a plan comes to in one colony.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="Name">Its name.</param>
/// <param name="Today">Chance of standing over the line today, 0 to 1.</param>
/// <param name="Peak">The greatest chance on the days that count, 0 to 1.</param>
/// <param name="PeakOn">The day of it.</param>
public sealed record PlannedColony(ColonyId Colony, string Name, double Today, double Peak, DateOnly PeakOn);
