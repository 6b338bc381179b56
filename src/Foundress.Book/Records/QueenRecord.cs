using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>Something happened to a colony's queen: it starts or stops its brood.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="On">The day.</param>
/// <param name="Event">What happened.</param>
/// <param name="ShareOfBees">The share of the bees that left with a swarm, 0 to 1; null when not known, and for all else.</param>
/// <param name="Note">Anything else.</param>
public sealed record QueenRecord(
    ColonyId Colony,
    DateOnly On,
    QueenEvent Event,
    double? ShareOfBees = null,
    string? Note = null) : Record;
