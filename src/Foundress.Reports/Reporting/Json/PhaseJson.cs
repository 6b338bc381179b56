namespace Foundress.Reports.Reporting.Json;

/// <summary>A phase of the season in the JSON report.</summary>
/// <param name="From">First day, ISO 8601.</param>
/// <param name="To">Last day.</param>
/// <param name="Phase">"dormantBroodless", "dormantWithBrood", "increase", "peak" or "decrease".</param>
internal sealed record PhaseJson(string From, string To, string Phase);
