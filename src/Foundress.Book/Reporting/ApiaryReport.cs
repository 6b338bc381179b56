using Foundress.Book.Seasons;

namespace Foundress.Book.Reporting;

/// <summary>One apiary's part of a report.</summary>
/// <param name="Name">The apiary.</param>
/// <param name="LivingColonies">Colonies alive at the end of the report's time.</param>
/// <param name="Strip">Its season.</param>
/// <param name="Days">Its jars added up day by day and method by method.</param>
/// <param name="Colonies">Its colonies by name.</param>
public sealed record ApiaryReport(
    string Name,
    int LivingColonies,
    SeasonStrip Strip,
    IReadOnlyList<DayTotal> Days,
    IReadOnlyList<ColonyReport> Colonies);
