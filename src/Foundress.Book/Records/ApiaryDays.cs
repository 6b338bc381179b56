using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>The days of an apiary's honey year that decide which controls are workable. The later record holds as a whole.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="SupersOn">The day supers with honey for people are to go on next; null when not known.</param>
/// <param name="HarvestOn">The day they are to come off; null when not known.</param>
public sealed record ApiaryDays(ApiaryId Apiary, DateOnly? SupersOn = null, DateOnly? HarvestOn = null) : Record;
