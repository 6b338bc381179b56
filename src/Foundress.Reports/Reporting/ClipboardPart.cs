using Foundress.Science.Sampling;

namespace Foundress.Reports.Reporting;

/// <summary>One apiary on the sheet for the clipboard.</summary>
/// <param name="Apiary">Its name.</param>
/// <param name="Colonies">The colonies drawn, in the order drawn.</param>
/// <param name="Reserves">Those that stand in, in order.</param>
/// <param name="Rule">What the rule for stopping tells apart and how such rounds end, in words; empty for a round of fixed size.</param>
/// <param name="Lines">The chart's rows; empty for a round of fixed size.</param>
public sealed record ClipboardPart(
    string Apiary, IReadOnlyList<string> Colonies, IReadOnlyList<string> Reserves, string Rule, IReadOnlyList<SequentialLine> Lines);
