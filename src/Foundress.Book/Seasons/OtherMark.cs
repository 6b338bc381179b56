using Foundress.Book.Journal;
using Foundress.Book.Judging;

namespace Foundress.Book.Seasons;

/// <summary>One count on another scale than mites per 100 bees, as it stands in a season.</summary>
/// <param name="Entry">The entry that recorded it.</param>
/// <param name="Colony">The colony.</param>
/// <param name="ColonyName">The colony's name.</param>
/// <param name="Reading">What it tells, on its own scale.</param>
public sealed record OtherMark(EntryId Entry, ColonyId Colony, string ColonyName, OtherReading Reading)
{
    /// <summary>The day.</summary>
    public DateOnly On => Reading.On;
}
