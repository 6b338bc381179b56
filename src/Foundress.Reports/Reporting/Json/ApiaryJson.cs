namespace Foundress.Reports.Reporting.Json;

/// <summary>An apiary in the JSON report.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LivingColonies">Colonies alive at the end of the report's time.</param>
/// <param name="Season">Its season strip.</param>
/// <param name="Days">Its jars added up by day and method.</param>
/// <param name="Colonies">Its colonies.</param>
internal sealed record ApiaryJson(string Name, int LivingColonies, SeasonJson Season, DayJson[] Days, ColonyJson[] Colonies);
