using Foundress.Book.Journal;
using Foundress.Science;

namespace Foundress.Book.State;

/// <summary>An apiary as the book has it today.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What the keeper calls it.</param>
/// <param name="Latitude">Degrees, south negative; null when not given.</param>
/// <param name="Longitude">Degrees, west negative; null when not given.</param>
/// <param name="Climate">Id of its climate; null to take the one usual for its latitude.</param>
/// <param name="LinePolicy">Id of its own lines; null to take the operation's.</param>
/// <param name="Note">Anything else.</param>
/// <param name="Altitude">Metres above the sea; null when not given.</param>
/// <param name="BroodFrom">The month in which queens there begin to lay; null to take the climate's.</param>
/// <param name="BroodTo">The last month in which they lay; null to take the climate's.</param>
public sealed record Apiary(
    ApiaryId Id,
    string Name,
    double? Latitude = null,
    double? Longitude = null,
    string? Climate = null,
    string? LinePolicy = null,
    string? Note = null,
    double? Altitude = null,
    int? BroodFrom = null,
    int? BroodTo = null)
{
    /// <summary>South when the latitude is below zero; north when it is not, or not given.</summary>
    public Hemisphere Hemisphere => Latitude < 0 ? Hemisphere.South : Hemisphere.North;
}
