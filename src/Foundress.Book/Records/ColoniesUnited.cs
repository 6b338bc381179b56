using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>A colony's bees were joined to another colony; the first ends, the second lives on.</summary>
/// <param name="Colony">The colony that was given up.</param>
/// <param name="Into">The colony that took its bees, and its mites.</param>
/// <param name="On">The day.</param>
public sealed record ColoniesUnited(ColonyId Colony, ColonyId Into, DateOnly On) : Record;
