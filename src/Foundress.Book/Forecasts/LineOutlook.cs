namespace Foundress.Book.Forecasts;

/// <summary>When a colony comes to stand over the line; chances from 0 to 1.</summary>
/// <param name="Line">The line in force on the first day, mites per 100 bees.</param>
/// <param name="Now">Chance of being over it on the first day.</param>
/// <param name="ByEnd">Chance of having been over the line of the day by the last day looked at.</param>
/// <param name="Early">The day by which that chance reaches 10 in 100; null when it does not.</param>
/// <param name="Likely">The day by which it reaches 50 in 100; null when it does not.</param>
/// <param name="Late">The day by which it reaches 90 in 100; null when it does not.</param>
public sealed record LineOutlook(double Line, double Now, double ByEnd, DateOnly? Early, DateOnly? Likely, DateOnly? Late);
