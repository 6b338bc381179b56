using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Dues;

/// <summary>One thing to do.</summary>
/// <param name="Key">Names it from day to day, so that it can be put off and found again in a calendar.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Apiary">Where.</param>
/// <param name="Colonies">The colonies it is about; empty for the whole apiary.</param>
/// <param name="Control">The use of a control it is about; null for none.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day; the first where it is one day.</param>
/// <param name="Time">How it stands to today.</param>
/// <param name="Text">In words, as a sentence.</param>
/// <param name="PutOff">How it was put off; null when it was not, or when that day has come.</param>
/// <param name="Agent">Id of the control a kept plan names; null for none.</param>
public sealed record DueItem(
    string Key, DueKind Kind, ApiaryId Apiary, IReadOnlyList<ColonyId> Colonies, ControlId? Control, DateOnly From, DateOnly To, DueTime Time, string Text, DueSnoozed? PutOff = null, string? Agent = null);
