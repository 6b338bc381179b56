namespace Foundress.Reports.Reporting.Json;

/// <summary>A colony in the JSON report.</summary>
/// <param name="Colony">The colony's id, a UUID.</param>
/// <param name="Name">Its name.</param>
/// <param name="Fate">What became of it, in words; null while it lives.</param>
/// <param name="Jars">Its jars by day.</param>
/// <param name="OtherCounts">Its counts on other scales by day.</param>
internal sealed record ColonyJson(string Colony, string Name, string? Fate, JarJson[] Jars, OtherJson[] OtherCounts);
