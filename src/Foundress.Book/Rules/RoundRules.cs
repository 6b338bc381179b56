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
            if (draw.EarlyStop is { } early)
                Check(early, draw.Chosen.Count, findings);
        }
    }

    internal static void Check(RoundStop record, BookState state, DateOnly today, Findings findings)
    {
        findings.Day("on", record.On, today);
        if (string.IsNullOrWhiteSpace(record.Reason))
            findings.Error("reason", record.Reason, "The reason is empty. Say why the round ends here.");
        findings.Text("reason", record.Reason, 500);
        if (!state.Rounds.TryGetValue(record.Round, out var round))
            findings.Error("round", record.Round, "This round is not in the book.");
        else if (!round.Plan.Draws.Any(draw => draw.Apiary == record.Apiary))
            findings.Error("apiary", record.Apiary, "This apiary is not part of the round.");
    }

    private static void Check(EarlyStop early, int jars, Findings findings)
    {
        if (jars < 2)
            findings.Error("earlyStop", jars, "A round that may stop early needs at least two jars in an apiary. Take more jars, or a round of fixed size.");
        if (!(early.Low is > 0 and < 100))
            findings.Error("low", early.Low, $"{Findings.Show(early.Low)} is not a level at which to wait. Give mites per 100 bees above 0, below the level at which to act.");
        if (!(early.High > early.Low && early.High <= 100))
            findings.Error("high", early.High, $"{Findings.Show(early.High)} is not a level at which to act. Give mites per 100 bees above {Findings.Show(early.Low)}, at most 100.");
        if (early.ErrorChance is not (>= 0.01 and <= 0.4))
            findings.Error("errorChance", early.ErrorChance, $"{Findings.Show(early.ErrorChance)} is not a chance to be wrong that can be planned for. Give 0.01 to 0.4.");
        if (early.Shape is not (>= 0.05 and <= 1000))
            findings.Error("shape", early.Shape, $"{Findings.Show(early.Shape)} is not a shape of the spread between colonies. Give 0.05 to 1000.");
        if (early.BeesPerJar is < 50 or > JarLimits.MostBees)
            findings.Error("beesPerJar", early.BeesPerJar, $"{early.BeesPerJar} is not a number of bees in a jar. Give 50 to {JarLimits.MostBees}.");
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
