namespace Foundress.Reports.Reporting.Json;

/// <summary>An apiary's season strip in the JSON report.</summary>
/// <param name="From">First day shown, ISO 8601.</param>
/// <param name="To">Last day shown.</param>
/// <param name="Today">The day the strip was made.</param>
/// <param name="Sentence">What matters and what to do next.</param>
/// <param name="Phases">The season's phases.</param>
/// <param name="Lines">The lines in force.</param>
/// <param name="Dues">What is due.</param>
/// <param name="Jars">The jars taken in the apiary, by day.</param>
internal sealed record SeasonJson(
    string From, string To, string Today, string Sentence, PhaseJson[] Phases, LineJson[] Lines, DueJson[] Dues, JarJson[] Jars);
