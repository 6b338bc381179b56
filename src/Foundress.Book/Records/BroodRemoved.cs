using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>Brood was taken out of a colony, with the mites in it.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="On">The day.</param>
/// <param name="Brood">Which brood.</param>
/// <param name="Share">The share of that brood that was taken, above 0 and at most 1.</param>
/// <param name="Note">Anything else.</param>
public sealed record BroodRemoved(
    ColonyId Colony,
    DateOnly On,
    RemovedBrood Brood,
    double Share,
    string? Note = null) : Record;
