using Foundress.Book.Forecasts;
using Foundress.Book.Records;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;

namespace Foundress.Book.Rules;

internal static class SiteRules
{
    internal static void Check(ApiaryRecord record, BookState state, KnowledgeBase knowledge, Findings findings)
    {
        var isNew = !state.Apiaries.ContainsKey(record.Apiary);
        findings.Name("name", record.Name, needed: isNew);
        if (record.Name is { } name
            && state.Apiaries.Values.Any(other => other.Id != record.Apiary && string.Equals(other.Name.Trim(), name.Trim(), StringComparison.OrdinalIgnoreCase)))
            findings.Error("name", name, $"There is already an apiary named '{name.Trim()}'. Give this one another name.");
        findings.Range("latitude", record.Latitude, -90, 90, "a latitude in degrees");
        findings.Range("longitude", record.Longitude, -180, 180, "a longitude in degrees");
        findings.Range("altitude", record.Altitude, -430, 6000, "an altitude in metres");
        var known = state.Apiaries.GetValueOrDefault(record.Apiary);
        if (record.BroodFrom is not null || record.BroodTo is not null)
            CheckBrood(record.BroodFrom ?? known?.BroodFrom, record.BroodTo ?? known?.BroodTo, record.Latitude ?? known?.Latitude, knowledge, findings);
        if (record.Climate is { } climate && !knowledge.Climates.TryGet(climate, out _))
            findings.Error("climate", climate, $"'{climate}' is not a known climate. Use one of: {string.Join(", ", knowledge.Climates.Ids)}.");
        if (record.LinePolicy is { } policy && policy != PolicyRules.Own && !knowledge.LinePolicies.TryGet(policy, out _))
            findings.Error("linePolicy", policy, $"'{policy}' is not a known set of lines. Use one of: {PolicyRules.Own}, {string.Join(", ", knowledge.LinePolicies.Ids)}.");
        findings.Text("note", record.Note, 2000);
    }

    private static void CheckBrood(int? from, int? to, double? latitude, KnowledgeBase knowledge, Findings findings)
    {
        if (from is null || to is null)
            findings.Error(from is null ? "broodFrom" : "broodTo", null, "The first and the last month of brood go together. Give both, or neither.");
        else if (from is not (>= 1 and <= 12) || to is not (>= 1 and <= 12))
            findings.Error(from is >= 1 and <= 12 ? "broodTo" : "broodFrom", $"{(from is >= 1 and <= 12 ? to : from)}", "A month is a number from 1 (January) to 12 (December).");
        else if (OwnSeason.DaysOf(from.Value, to.Value, latitude < 0) is not { } days)
            findings.Error("broodTo", $"{to}", "Brood from that month to that month would run through the winter and stop in summer. Give the month in which laying begins and the last in which it goes on.");
        else if (latitude is null or (>= -90 and <= 90)
            && OwnYears.Of(knowledge, knowledge.Climates.DefaultFor(latitude ?? 48).Id, new(latitude < 0 ? Hemisphere.South : Hemisphere.North), days) is null)
            findings.Error("broodTo", $"{to}", "By the figures for bees no colony would live through the year with brood in those months only. Give the months in which there is any brood at all.");
    }
}
