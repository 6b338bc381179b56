using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>The usual outdoor temperatures of an apiary, month by month. The later record holds as a whole.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Highs">Usual highest temperature of the day in degrees Celsius, January to December: 12 numbers.</param>
/// <param name="Lows">Usual lowest temperature of the day in degrees Celsius, January to December: 12 numbers.</param>
/// <param name="Station">Where they come from, such as the nearest weather station.</param>
public sealed record NormalsRecord(ApiaryId Apiary, IReadOnlyList<double> Highs, IReadOnlyList<double> Lows, string? Station = null) : Record;
