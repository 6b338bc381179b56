using System.Text.Json.Serialization;

namespace Foundress.Reports.Reporting.Json;

/// <summary>Generated writers of the JSON report: no reflection, writing only.</summary>
[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Serialization,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    WriteIndented = true,
    NewLine = "\n")]
[JsonSerializable(typeof(ReportJson))]
internal sealed partial class ReportJsonContext : JsonSerializerContext;
