using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>A colony died or was given up.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="On">The day it was found dead.</param>
/// <param name="Cause">What the keeper thinks killed it.</param>
public sealed record ColonyDied(ColonyId Colony, DateOnly On, string? Cause = null) : Record;
