using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>A colony was carried to another apiary.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="To">The apiary it now stands in.</param>
/// <param name="On">The day it was moved.</param>
/// <param name="Note">Anything else.</param>
public sealed record ColonyMoved(ColonyId Colony, ApiaryId To, DateOnly On, string? Note = null) : Record;
