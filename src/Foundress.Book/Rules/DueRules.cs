using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Rules;

/// <summary>Rules for the days of an apiary and for what is put off.</summary>
internal static class DueRules
{
    // Further off than that a day is a slip of the year (product choice).
    private const int FurthestDays = 400;

    internal static void Check(ApiaryDays record, BookState state, DateOnly today, Findings findings)
    {
        if (!state.Apiaries.ContainsKey(record.Apiary))
            findings.Error("apiary", record.Apiary, RuleTexts.ApiaryUnknown);
        Near("supersOn", record.SupersOn, today, findings);
        Near("harvestOn", record.HarvestOn, today, findings);
        if (record.SupersOn is { } on && record.HarvestOn is { } off && off < on && on.DayNumber - off.DayNumber < 60)
            findings.Doubt("harvestOn", off, RuleTexts.FormatHarvestBeforeSupers(Findings.Show(off), Findings.Show(on)));
    }

    internal static void Check(DueSnoozed record, DateOnly today, Findings findings)
    {
        findings.Name("due", record.Due, needed: true, most: 200);
        if (string.IsNullOrWhiteSpace(record.Reason))
            findings.Error("reason", record.Reason, RuleTexts.PutOffReasonMissing);
        findings.Text("reason", record.Reason, 500);
        if (record.Until > today.AddDays(FurthestDays))
            findings.Error("until", record.Until, RuleTexts.FormatYearAway(Findings.Show(record.Until)));
    }

    private static void Near(string field, DateOnly? day, DateOnly today, Findings findings)
    {
        if (day is { } given && Math.Abs(given.DayNumber - today.DayNumber) > FurthestDays)
            findings.Error(field, given, RuleTexts.FormatYearFromToday(Findings.Show(given), Findings.Show(today)));
    }
}
