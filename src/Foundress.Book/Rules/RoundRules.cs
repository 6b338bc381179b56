using System.Globalization;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Rules;

internal static class RoundRules
{
    internal static void Check(RoundRecord record, BookState state, KnowledgeBase knowledge, DateOnly today, Findings findings)
    {
        if (record.On < today.AddYears(-1) || record.On > today.AddYears(1))
            findings.Error("on", record.On, $"{Findings.Show(record.On)} is more than a year from today. Give the day the jars are to be taken.");
        if (!knowledge.Methods.TryGet(record.Method, out var method) || !method.IsJar)
            findings.Error("method", record.Method, $"'{record.Method}' is not a way to count mites on a jar of bees. Use one of: {string.Join(", ", knowledge.Methods.Where(m => m.IsJar).Select(m => m.Id))}.");
        if (!ulong.TryParse(record.Seed, NumberStyles.None, CultureInfo.InvariantCulture, out _))
            findings.Error("seed", record.Seed, $"'{record.Seed}' is not a seed. Give a whole number from 0 to {ulong.MaxValue}.");
        findings.Text("purpose", record.Purpose, 200);
        if (record.Draws.Sum(draw => draw.Chosen.Count) == 0)
            findings.Error("draws", 0, "No colony was drawn. Register colonies in the apiaries of this round first.");
        foreach (var draw in record.Draws)
        {
            if (!state.Apiaries.ContainsKey(draw.Apiary))
                findings.Error("apiary", draw.Apiary, "This apiary is not in the book.");
            foreach (var colony in draw.Chosen.Concat(draw.Reserves))
                RecordRules.Known(colony, "colony", state, findings);
        }
    }

    internal static void Check(RoundSkip record, BookState state, DateOnly today, Findings findings)
    {
        findings.Day("on", record.On, today);
        if (string.IsNullOrWhiteSpace(record.Reason))
            findings.Error("reason", record.Reason, "The reason is empty. Say why the colony was passed over.");
        findings.Text("reason", record.Reason, 500);
        if (!state.Rounds.TryGetValue(record.Round, out var round))
            findings.Error("round", record.Round, "This round is not in the book.");
        else if (!round.Plan.Draws.Any(draw => draw.Chosen.Contains(record.Colony) || draw.Reserves.Contains(record.Colony)))
            findings.Error("colony", record.Colony, "This colony is not part of the round.");
    }
}
