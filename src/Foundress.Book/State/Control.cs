using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>A use of a control that counts (was not struck).</summary>
/// <param name="Entry">The entry that recorded it last.</param>
/// <param name="Facts">What was recorded.</param>
/// <param name="Ends">How it ended, by day; one for all colonies or several.</param>
public sealed record Control(Entry Entry, ControlRecord Facts, IReadOnlyList<ControlEnd> Ends)
{
    /// <summary>Its id.</summary>
    public ControlId Id => Facts.Control;

    /// <summary>How it ended in a colony; null when nobody said yet.</summary>
    public ControlEnd? EndIn(ColonyId colony) => Ends.LastOrDefault(end => end.Facts.Colonies is not { } some || some.Contains(colony));
}
