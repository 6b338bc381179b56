using Foundress.Science.Judging;

namespace Foundress.Book.Seasons;

/// <summary>A stretch of days in one phase of the season.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Phase">The phase.</param>
public readonly record struct PhaseSpan(DateOnly From, DateOnly To, SeasonPhase Phase);
