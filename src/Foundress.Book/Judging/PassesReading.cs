using Foundress.Science.Estimation;

namespace Foundress.Book.Judging;

/// <summary>What repeat passes over the same bees tell of the mites that were on them. Shown beside the level, never mixed into it.</summary>
/// <param name="Removal">The estimate, or why there is none.</param>
/// <param name="Interval">Interval of the mites there were; none without an estimate.</param>
/// <param name="PerHundred">The level there would be if every mite on these bees had been found, in mites per 100 bees; none without an estimate.</param>
/// <param name="Next">What another pass may bring; none without an estimate, or after the most passes.</param>
/// <param name="AnotherIsWorthIt">Whether another pass is worth it; none when that cannot be said.</param>
/// <param name="Finding">What the passes say, in plain sentences.</param>
/// <param name="Advice">Whether to wash the same bees again; none when there is nothing to say.</param>
public sealed record PassesReading(
    Removal Removal,
    RemovalInterval? Interval,
    double? PerHundred,
    NextPass? Next,
    bool? AnotherIsWorthIt,
    string Finding,
    string? Advice);
