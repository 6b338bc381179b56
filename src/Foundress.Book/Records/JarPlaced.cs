using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>Says which colony a loose jar came from, or corrects it. The later of two such entries holds.</summary>
/// <param name="Jar">The entry that recorded the jar.</param>
/// <param name="Colony">The colony it came from.</param>
public sealed record JarPlaced(EntryId Jar, ColonyId Colony) : Record;
