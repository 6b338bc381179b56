using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Rules;

internal static class ControlPlanRules
{
    private const int MostUses = 12;

    internal static void Check(ControlPlanRecord record, BookState state, DateOnly today, Findings findings)
    {
        if (!state.Apiaries.ContainsKey(record.Apiary))
            findings.Error("apiary", record.Apiary, RuleTexts.ApiaryUnknown);
        if (record.Colonies.Count == 0)
            findings.Error("colonies", null, ControlRuleTexts.PlanWithoutColony);
        foreach (var colony in record.Colonies)
            RecordRules.Known(colony, "colonies", state, findings);
        if (record.Uses.Count is 0 or > MostUses)
            findings.Error("uses", record.Uses.Count, ControlRuleTexts.FormatPlanUsesNumber(MostUses, record.Uses.Count));
        if (record.Made > today)
            findings.Error("made", record.Made, ControlRuleTexts.FormatPlanMadeLater(Findings.Show(today)));
        foreach (var use in record.Uses)
        {
            if (string.IsNullOrWhiteSpace(use.Agent))
                findings.Error("uses", use.Agent, ControlRuleTexts.PlanControlWithoutId);
            if (use.End < use.Start)
                findings.Error("uses", use.End, ControlRuleTexts.FormatPlanUseEnd(Findings.Show(use.Start)));
            if (use.Start < record.Made || use.Start > record.Made.AddYears(2))
                findings.Error("uses", use.Start, ControlRuleTexts.FormatPlanUseStart(Findings.Show(record.Made)));
        }

        findings.Range("tolerance", record.Tolerance, 0, 1, QuantityTexts.Chance);
        findings.Range("peak", record.Peak, 0, 1, QuantityTexts.Chance);
        findings.Text("note", record.Note, 2000);
    }
}
