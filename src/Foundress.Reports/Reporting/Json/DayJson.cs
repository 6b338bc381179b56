namespace Foundress.Reports.Reporting.Json;

/// <summary>All jars of a day and method in the JSON report.</summary>
/// <param name="On">The day, ISO 8601.</param>
/// <param name="Method">The counting method's name.</param>
/// <param name="Jars">How many jars.</param>
/// <param name="Mites">Mites in all of them.</param>
/// <param name="Bees">Bees in all of them.</param>
/// <param name="LevelPer100">Mites per 100 bees over all of them.</param>
/// <param name="LowerPer100">Lower end of the apiary level's interval; null when one jar cannot tell.</param>
/// <param name="UpperPer100">Upper end of that interval.</param>
/// <param name="JarsAbove">How many jars stand above the line.</param>
/// <param name="JarsUnclear">How many are unclear.</param>
/// <param name="JarsBelow">How many stand below it.</param>
internal sealed record DayJson(
    string On, string Method, int Jars, int Mites, double Bees,
    double LevelPer100, double? LowerPer100, double? UpperPer100, int JarsAbove, int JarsUnclear, int JarsBelow);
