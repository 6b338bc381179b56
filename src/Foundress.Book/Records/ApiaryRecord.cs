using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>
/// Registers an apiary, or changes what is known of it: a field that is not given stays as it was, and of two changes to
/// the same field the later one holds.
/// </summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Name">What the keeper calls it; needed when it is first registered.</param>
/// <param name="Latitude">Degrees, south negative, -90 to 90.</param>
/// <param name="Longitude">Degrees, west negative, -180 to 180.</param>
/// <param name="Climate">Id of the climate whose season the apiary follows, from the knowledge files.</param>
/// <param name="LinePolicy">Id of the lines this apiary is judged by, where they differ from the operation's.</param>
/// <param name="Note">Anything else: access, forage, the landowner's gate.</param>
/// <param name="Altitude">Metres above the sea, -430 to 6,000: higher apiaries have a later spring.</param>
/// <param name="BroodFrom">The month, 1 to 12, in which queens there begin to lay, where the keeper knows it better than the climate does; goes with <paramref name="BroodTo"/>.</param>
/// <param name="BroodTo">The last month, 1 to 12, in which they lay.</param>
public sealed record ApiaryRecord(
    ApiaryId Apiary,
    string? Name = null,
    double? Latitude = null,
    double? Longitude = null,
    string? Climate = null,
    string? LinePolicy = null,
    string? Note = null,
    double? Altitude = null,
    int? BroodFrom = null,
    int? BroodTo = null) : Record;
