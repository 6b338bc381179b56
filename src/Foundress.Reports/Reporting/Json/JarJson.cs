namespace Foundress.Reports.Reporting.Json;

/// <summary>A jar in the JSON report.</summary>
/// <param name="Jar">The jar's id, a UUID.</param>
/// <param name="Colony">The colony's id, a UUID.</param>
/// <param name="ColonyName">The colony's name.</param>
/// <param name="On">The day, ISO 8601.</param>
/// <param name="Method">The counting method's name.</param>
/// <param name="Mites">Mites counted.</param>
/// <param name="Bees">Bees in the jar.</param>
/// <param name="LevelPer100">Mites per 100 bees, on the method's own scale.</param>
/// <param name="LowerPer100">Lower end of the interval.</param>
/// <param name="UpperPer100">Upper end of the interval.</param>
/// <param name="Standing">"below", "unclear" or "above"; null when the method is on another scale than the line.</param>
internal sealed record JarJson(
    string Jar, string Colony, string ColonyName, string On, string Method, int Mites, double Bees,
    double LevelPer100, double LowerPer100, double UpperPer100, string? Standing);
