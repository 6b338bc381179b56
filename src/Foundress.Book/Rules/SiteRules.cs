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
            findings.Error("name", name, RuleTexts.FormatApiaryNameTaken(name.Trim()));
        findings.Range("latitude", record.Latitude, -90, 90, QuantityTexts.Latitude);
        findings.Range("longitude", record.Longitude, -180, 180, QuantityTexts.Longitude);
        findings.Range("altitude", record.Altitude, -430, 6000, QuantityTexts.Altitude);
        var known = state.Apiaries.GetValueOrDefault(record.Apiary);
        if (record.BroodFrom is not null || record.BroodTo is not null)
            CheckBrood(record.BroodFrom ?? known?.BroodFrom, record.BroodTo ?? known?.BroodTo, record.Latitude ?? known?.Latitude, knowledge, findings);
        if (record.Climate is { } climate && !knowledge.Climates.TryGet(climate, out _))
            findings.Error("climate", climate, RuleTexts.FormatClimateUnknown(climate, string.Join(", ", knowledge.Climates.Ids)));
        if (record.LinePolicy is { } policy && policy != PolicyRules.Own && !knowledge.LinePolicies.TryGet(policy, out _))
            findings.Error("linePolicy", policy, RuleTexts.FormatLinesUnknown(policy, string.Join(", ", knowledge.LinePolicies.Ids.Prepend(PolicyRules.Own))));
        findings.Text("note", record.Note, 2000);
    }

    private static void CheckBrood(int? from, int? to, double? latitude, KnowledgeBase knowledge, Findings findings)
    {
        if (from is null || to is null)
            findings.Error(from is null ? "broodFrom" : "broodTo", null, RuleTexts.BroodMonthsTogether);
        else if (from is not (>= 1 and <= 12) || to is not (>= 1 and <= 12))
            findings.Error(from is >= 1 and <= 12 ? "broodTo" : "broodFrom", $"{(from is >= 1 and <= 12 ? to : from)}", RuleTexts.MonthNumber);
        else if (OwnSeason.DaysOf(from.Value, to.Value, latitude < 0) is not { } days)
            findings.Error("broodTo", $"{to}", RuleTexts.BroodThroughWinter);
        else if (latitude is null or (>= -90 and <= 90)
            && OwnYears.Of(knowledge, knowledge.Climates.DefaultFor(latitude ?? 48).Id, new(latitude < 0 ? Hemisphere.South : Hemisphere.North), days) is null)
            findings.Error("broodTo", $"{to}", RuleTexts.BroodTooShort);
    }
}
