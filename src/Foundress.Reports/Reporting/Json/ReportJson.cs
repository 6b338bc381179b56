namespace Foundress.Reports.Reporting.Json;

/// <summary>The JSON report.</summary>
/// <param name="Format">Always "foundress-season-report".</param>
/// <param name="Version">Version of this shape; it rises when a field changes its meaning or is taken away.</param>
/// <param name="Operation">The operation's name.</param>
/// <param name="From">First day covered, ISO 8601.</param>
/// <param name="To">Last day covered.</param>
/// <param name="Invented">Whether the records are an invented demonstration.</param>
/// <param name="Confidence">Confidence of every interval, for example 0.95.</param>
/// <param name="Lines">The lines jars were judged by, in words, with their source.</param>
/// <param name="Notes">Formulas, sources, assumptions and warnings.</param>
/// <param name="Limits">What the report cannot say.</param>
/// <param name="Apiaries">The apiaries.</param>
internal sealed record ReportJson(
    string Format, int Version, string Operation, string From, string To, bool Invented, double Confidence,
    string Lines, string[] Notes, string[] Limits, ApiaryJson[] Apiaries);
