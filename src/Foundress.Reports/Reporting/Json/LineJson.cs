namespace Foundress.Reports.Reporting.Json;

/// <summary>The lines in force over a stretch of days in the JSON report.</summary>
/// <param name="From">First day, ISO 8601.</param>
/// <param name="To">Last day.</param>
/// <param name="WatchPer100">From here a control may be needed, in mites per 100 bees; null when there is none.</param>
/// <param name="ActPer100">Above here a control is needed.</param>
internal sealed record LineJson(string From, string To, double? WatchPer100, double ActPer100);
