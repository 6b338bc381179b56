using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>Registers a colony in an apiary, or renames it: a field that is not given stays as it was.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="Name">Its number or name on the hive; needed when it is first registered, unique within its apiary.</param>
/// <param name="Apiary">Where it stands when it is first registered.</param>
/// <param name="On">Since when it stands there.</param>
/// <param name="Note">Anything else.</param>
public sealed record ColonyRecord(
    ColonyId Colony,
    string? Name = null,
    ApiaryId? Apiary = null,
    DateOnly? On = null,
    string? Note = null) : Record;
