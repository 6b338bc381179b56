using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Rules;

internal static class ControlPlanRules
{
    private const int MostUses = 12;

    internal static void Check(ControlPlanRecord record, BookState state, DateOnly today, Findings findings)
    {
        if (!state.Apiaries.ContainsKey(record.Apiary))
            findings.Error("apiary", record.Apiary, "This apiary is not in the book. Register it first, or choose another.");
        if (record.Colonies.Count == 0)
            findings.Error("colonies", null, "No colony is named. Choose one or more.");
        foreach (var colony in record.Colonies)
            RecordRules.Known(colony, "colonies", state, findings);
        if (record.Uses.Count is 0 or > MostUses)
            findings.Error("uses", record.Uses.Count, $"A plan has 1 to {MostUses} controls, not {record.Uses.Count}.");
        if (record.Made > today)
            findings.Error("made", record.Made, $"The plan cannot have been made after today ({Findings.Show(today)}). Check the day.");
        foreach (var use in record.Uses)
        {
            if (string.IsNullOrWhiteSpace(use.Agent))
                findings.Error("uses", use.Agent, "A control of the plan has no id. Name it.");
            if (use.End < use.Start)
                findings.Error("uses", use.End, $"A control that starts on {Findings.Show(use.Start)} cannot be over before. Check both days.");
            if (use.Start < record.Made || use.Start > record.Made.AddYears(2))
                findings.Error("uses", use.Start, $"A planned start lies from {Findings.Show(record.Made)}, the day the plan was made, to two years later. Check the day.");
        }

        findings.Range("tolerance", record.Tolerance, 0, 1, "a chance");
        findings.Range("peak", record.Peak, 0, 1, "a chance");
        findings.Text("note", record.Note, 2000);
    }
}
