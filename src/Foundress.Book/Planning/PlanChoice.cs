using Foundress.Book.Forecasts;

namespace Foundress.Book.Planning;

/// <summary>A plan worth the keeper's choice.</summary>
/// <param name="Title">Its controls in a few words.</param>
/// <param name="Virtues">What it is shown for.</param>
/// <param name="Why">The same in sentences.</param>
/// <param name="Controls">Its controls, by day; none for doing nothing.</param>
/// <param name="Holds">Whether every colony's chance stays within the tolerance on the days that count.</param>
/// <param name="Peak">The greatest chance of any colony on the days that count, 0 to 1.</param>
/// <param name="PeakOn">The day of it.</param>
/// <param name="ShareAtEnd">The chance of standing over the line on the last day, for a colony taken at random.</param>
/// <param name="DaysOver">Days a colony stands over the line on average.</param>
/// <param name="Visits">Visits it takes at least.</param>
/// <param name="WorstHazard">The hazard of its most hazardous control, 0 (none) to 5.</param>
/// <param name="Cost">Cost for a colony by the keeper's own figures; null when one is not known.</param>
/// <param name="Colonies">What it comes to in each colony, the most likely over the line first.</param>
/// <param name="Fan">The level of any one colony, taken at random.</param>
/// <param name="Sentence">What it comes to, in words.</param>
public sealed record PlanChoice(
    string Title,
    IReadOnlyList<PlanVirtue> Virtues,
    IReadOnlyList<string> Why,
    IReadOnlyList<PlannedControl> Controls,
    bool Holds,
    double Peak,
    DateOnly PeakOn,
    double ShareAtEnd,
    double DaysOver,
    int Visits,
    int WorstHazard,
    double? Cost,
    IReadOnlyList<PlannedColony> Colonies,
    IReadOnlyList<FanPoint> Fan,
    string Sentence);
