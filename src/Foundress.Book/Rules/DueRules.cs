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
            findings.Error("apiary", record.Apiary, "This apiary is not in the book. Register it first, or choose another.");
        Near("supersOn", record.SupersOn, today, findings);
        Near("harvestOn", record.HarvestOn, today, findings);
        if (record.SupersOn is { } on && record.HarvestOn is { } off && off < on && on.DayNumber - off.DayNumber < 60)
            findings.Doubt("harvestOn", off, $"The harvest ({Findings.Show(off)}) comes before the supers go on ({Findings.Show(on)}). That is right only when supers are on already; check both days.");
    }

    internal static void Check(DueSnoozed record, DateOnly today, Findings findings)
    {
        findings.Name("due", record.Due, needed: true, most: 200);
        if (string.IsNullOrWhiteSpace(record.Reason))
            findings.Error("reason", record.Reason, "No reason is given. Say in a few words why it is put off.");
        findings.Text("reason", record.Reason, 500);
        if (record.Until > today.AddDays(FurthestDays))
            findings.Error("until", record.Until, $"{Findings.Show(record.Until)} is more than a year away. Give a nearer day.");
    }

    private static void Near(string field, DateOnly? day, DateOnly today, Findings findings)
    {
        if (day is { } given && Math.Abs(given.DayNumber - today.DayNumber) > FurthestDays)
            findings.Error(field, given, $"{Findings.Show(given)} is more than a year from today ({Findings.Show(today)}). Check the year, or leave it out.");
    }
}
