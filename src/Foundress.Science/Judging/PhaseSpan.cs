namespace Foundress.Science.Judging;

/// <summary>A stretch of days in one phase.</summary>
/// <param name="Phase">The phase.</param>
/// <param name="From">Its first day.</param>
/// <param name="Until">The first day after it.</param>
public readonly record struct PhaseSpan(SeasonPhase Phase, DateOnly From, DateOnly Until)
{
    /// <summary>Number of days.</summary>
    public int Days => Until.DayNumber - From.DayNumber;

    /// <summary>The last day.</summary>
    public DateOnly LastDay => Until.AddDays(-1);
}
