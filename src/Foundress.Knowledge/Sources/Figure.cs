namespace Foundress.Knowledge;

/// <summary>A number with its unit and its source.</summary>
/// <remarks>Safe for concurrent use: immutable. All numbers are finite, and <c>Low ≤ Value ≤ High</c>.</remarks>
/// <param name="Value">
/// The number. Where the source prints only a range, the middle of that range, and then <see cref="ValueIsMidpoint"/> is true:
/// show the range, not the middle, to people.
/// </param>
/// <param name="Unit">The unit, one of <see cref="Units.All"/>.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Spread">What the source prints after "±" (a standard deviation or standard error as the source says), in <paramref name="Unit"/>, 0 or more; null when not printed.</param>
/// <param name="Low">Lower end of the printed range; null when none is printed.</param>
/// <param name="High">Upper end of the printed range; null when none is printed.</param>
/// <param name="ValueIsMidpoint">True when <paramref name="Value"/> was not printed but is the middle of the range.</param>
public sealed record Figure(
    double Value,
    string Unit,
    Source Source,
    double? Spread = null,
    double? Low = null,
    double? High = null,
    bool ValueIsMidpoint = false);
