using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>A use of a control ended: strips were taken out, the last dose was given, or it was stopped.</summary>
/// <param name="Control">The use.</param>
/// <param name="On">The day.</param>
/// <param name="Ending">As planned, stopped early, or given in part.</param>
/// <param name="Colonies">The colonies it ended in; null for all of them.</param>
/// <param name="Reason">Why it did not run as planned; needed then.</param>
/// <param name="Note">Anything else.</param>
public sealed record ControlEnded(
    ControlId Control,
    DateOnly On,
    ControlEnding Ending = ControlEnding.AsPlanned,
    IReadOnlyList<ColonyId>? Colonies = null,
    string? Reason = null,
    string? Note = null) : Record;
