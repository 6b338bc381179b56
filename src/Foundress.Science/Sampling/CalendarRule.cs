using Foundress.Science.Judging;

namespace Foundress.Science.Sampling;

/// <summary>When in the colonies' year to sample, and why. Data, not code.</summary>
/// <param name="Phase">The phase to sample in.</param>
/// <param name="Point">Where in the phase.</param>
/// <param name="Purpose">What the count is for; shown to the keeper or looked up as a key for a text.</param>
/// <param name="Leeway">Days before and after the date that still serve, 0 or more; the window never leaves the phase.</param>
public sealed record CalendarRule(SeasonPhase Phase, PhasePoint Point, string Purpose, int Leeway = 7);
