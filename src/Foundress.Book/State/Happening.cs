using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>
/// Something that counts and changed a colony's queen, bees or brood: a <see cref="QueenRecord"/>, <see cref="ColonyBegan"/>,
/// <see cref="BroodRemoved"/>, <see cref="ColonySplit"/> (for both colonies) or <see cref="ColoniesUnited"/> (for both).
/// </summary>
/// <param name="Entry">The entry that recorded it.</param>
/// <param name="On">The day.</param>
/// <param name="Facts">What was recorded.</param>
public sealed record Happening(Entry Entry, DateOnly On, Record Facts);
