using Foundress.Book.Journal;

namespace Foundress.Reports.Drawing;

/// <summary>One row of the table behind a strip.</summary>
/// <param name="Kind">What the row is about.</param>
/// <param name="From">Its first day, for sorting.</param>
/// <param name="Jar">The jar, for a link; null for other rows.</param>
/// <param name="When">The day or days, ISO 8601.</param>
/// <param name="Subject">The colony of a jar; otherwise "season", "lines" or "due".</param>
/// <param name="Finding">Phase, lines, what is due, or the jar's level with its interval in mites per 100 bees.</param>
/// <param name="Basis">What a jar's level rests on (mites, bees, method), or the window of what is due; may be empty.</param>
/// <param name="State">The jar's standing, or whether what is due is done; may be empty.</param>
public sealed record StripRow(
    StripRowKind Kind,
    DateOnly From,
    EntryId? Jar,
    string When,
    string Subject,
    string Finding,
    string Basis,
    string State);
