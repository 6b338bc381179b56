using Foundress.Science;
using Foundress.Science.Judging;

namespace Foundress.Knowledge;

/// <summary>A usual year of the colony: a starting point that the keeper's own word overrules.</summary>
/// <param name="Id">Kebab-case name.</param>
/// <param name="Title">Name shown to people.</param>
/// <param name="Description">How the year runs, in plain words.</param>
/// <param name="LatitudeFrom">Least degrees from the equator for which it is the default, inclusive; null when it is never the default.</param>
/// <param name="LatitudeTo">Most degrees from the equator, exclusive (90 inclusive); null when it is never the default.</param>
/// <param name="NorthernMonths">The phase in each month from January to December as read in the northern hemisphere; 12 entries. The south is six months apart.</param>
/// <param name="Source">Where the year comes from.</param>
public sealed record Climate(
    string Id,
    string Title,
    string Description,
    double? LatitudeFrom,
    double? LatitudeTo,
    IReadOnlyList<SeasonPhase> NorthernMonths,
    Source Source) : IHasId
{
    /// <summary>The year as it runs at a site in that hemisphere.</summary>
    public SeasonYear YearIn(Hemisphere hemisphere) => SeasonYear.For(NorthernMonths, hemisphere);

    /// <summary>Whether this climate is the default at that distance from the equator, 0 to 90 degrees.</summary>
    internal bool IsDefaultAt(double degrees) =>
        LatitudeFrom is { } from && LatitudeTo is { } to && degrees >= from && (degrees < to || (to >= 90 && degrees <= 90));
}
