using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

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
        if (record.Climate is { } climate && !knowledge.Climates.TryGet(climate, out _))
            findings.Error("climate", climate, $"'{climate}' is not a known climate. Use one of: {string.Join(", ", knowledge.Climates.Ids)}.");
        if (record.LinePolicy is { } policy && policy != PolicyRules.Own && !knowledge.LinePolicies.TryGet(policy, out _))
            findings.Error("linePolicy", policy, $"'{policy}' is not a known set of lines. Use one of: {PolicyRules.Own}, {string.Join(", ", knowledge.LinePolicies.Ids)}.");
        findings.Text("note", record.Note, 2000);
    }
}
