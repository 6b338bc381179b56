using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Rules;

internal static class AgentRules
{
    internal static void Check(AgentRecord record, BookState state, KnowledgeBase knowledge, Findings findings)
    {
        var agents = knowledge.Controls.Agents;
        var isKnown = agents.TryGet(record.Agent, out var known);
        if (string.IsNullOrEmpty(record.Agent) || record.Agent.Length > 80 || record.Agent.Any(c => c is not ((>= 'a' and <= 'z') or (>= '0' and <= '9') or '-')))
            findings.Error("agent", record.Agent, ControlRuleTexts.FormatAgentId(record.Agent));
        var own = state.OwnAgents.GetValueOrDefault(record.Agent);
        findings.Name("title", record.Title ?? own?.Title, needed: !isKnown);
        if (isKnown && record.Like is not null)
            findings.Error("like", record.Like, ControlRuleTexts.FormatKnownIsLikeNone(known!.Title));
        else if (!isKnown && !agents.TryGet(record.Like ?? own?.Like, out _))
            findings.Error("like", record.Like, ControlRuleTexts.FormatLikeMissing(string.Join(", ", agents.Ids)));
        findings.Range("days", record.Days, 1, 365, QuantityTexts.DaysAtWork);
        findings.Range("coldest", record.Coldest, -30, 60, QuantityTexts.AirTemperature);
        findings.Range("warmest", record.Warmest, -30, 60, QuantityTexts.AirTemperature);
        if ((record.Coldest ?? own?.Coldest) is { } coldest && (record.Warmest ?? own?.Warmest) is { } warmest && coldest > warmest)
            findings.Error("coldest", coldest, ControlRuleTexts.FormatColdestAboveWarmest(Findings.Show(coldest), Findings.Show(warmest)));
        findings.Range("daysBeforeSupers", record.DaysBeforeSupers, 0, 365, QuantityTexts.DaysBeforeSupers);
        findings.Range("withdrawalDays", record.WithdrawalDays, 0, 3650, QuantityTexts.WithdrawalPeriod);
        findings.Range("minimumInterval", record.MinimumInterval, 0, 365, QuantityTexts.DaysBetweenUses);
        findings.Range("costPerColony", record.CostPerColony, 0, 10_000, QuantityTexts.CostForColony);
        findings.Range("target", record.Target, 1, 100, QuantityTexts.ShareOfMites);
        foreach (var alias in record.Aliases ?? [])
            findings.Name("aliases", alias, needed: true);
        findings.Text("labelSource", record.LabelSource, 300);
        findings.Text("note", record.Note, 2000);
        if (known is not null)
            CheckNarrower(record, known, findings);
    }

    /// <summary>A label may be narrower than what is published; a wider figure is more often a typing slip.</summary>
    private static void CheckNarrower(AgentRecord record, ControlAgent known, Findings findings)
    {
        var leasts = known.Temperatures.Where(limit => limit is { IsLeast: true, Of: DayTemperature.Maximum }).Select(limit => limit.Degrees.Value).ToArray();
        var mosts = known.Temperatures.Where(limit => limit is { IsLeast: false, Of: DayTemperature.Maximum }).Select(limit => limit.Degrees.Value).ToArray();
        if (record.Coldest is { } coldest && leasts.Length > 0 && coldest < leasts.Min())
            findings.Doubt("coldest", coldest, ControlRuleTexts.FormatColderThanPublished(Findings.Show(coldest), known.Title, Findings.Show(leasts.Min())));
        if (record.Warmest is { } warmest && mosts.Length > 0 && warmest > mosts.Max())
            findings.Doubt("warmest", warmest, ControlRuleTexts.FormatWarmerThanPublished(Findings.Show(warmest), known.Title, Findings.Show(mosts.Max())));
        if (record.Days is { } days && (days < (known.Days.Low ?? known.Days.Value) || days > (known.Days.High ?? known.Days.Value)))
            findings.Doubt("days", days, ControlRuleTexts.FormatDaysOutsidePublished(days, known.Title));
        if (record.Supers == SuperRule.MayBeOn && known.Supers.Any(ruling => ruling.Rule == SuperRule.NotOn))
            findings.Doubt("supers", record.Supers, ControlRuleTexts.FormatSupersElsewhere(known.Title));
    }
}
