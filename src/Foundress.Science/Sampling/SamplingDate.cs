using Foundress.Science.Judging;

namespace Foundress.Science.Sampling;

/// <summary>A date to sample on.</summary>
/// <param name="On">The best day.</param>
/// <param name="From">The first day that serves.</param>
/// <param name="To">The last day that serves.</param>
/// <param name="Phase">The colonies' phase on the best day.</param>
/// <param name="Purpose">What the count is for.</param>
public sealed record SamplingDate(DateOnly On, DateOnly From, DateOnly To, SeasonPhase Phase, string Purpose);
