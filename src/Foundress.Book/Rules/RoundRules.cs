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
            findings.Error("on", record.On, JarRuleTexts.FormatRoundYearAway(Findings.Show(record.On)));
        if (!knowledge.Methods.TryGet(record.Method, out var method) || !method.IsJar)
            findings.Error("method", record.Method, JarRuleTexts.FormatRoundMethod(record.Method, string.Join(", ", knowledge.Methods.Where(m => m.IsJar).Select(m => m.Id))));
        if (!ulong.TryParse(record.Seed, NumberStyles.None, CultureInfo.InvariantCulture, out _))
            findings.Error("seed", record.Seed, JarRuleTexts.FormatSeedNumber(record.Seed, ulong.MaxValue));
        findings.Text("purpose", record.Purpose, 200);
        if (record.Draws.Sum(draw => draw.Chosen.Count) == 0)
            findings.Error("draws", 0, JarRuleTexts.NothingDrawn);
        foreach (var draw in record.Draws)
        {
            if (!state.Apiaries.ContainsKey(draw.Apiary))
                findings.Error("apiary", draw.Apiary, RuleTexts.ApiaryNotInBook);
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
            findings.Error("reason", record.Reason, JarRuleTexts.StopReasonEmpty);
        findings.Text("reason", record.Reason, 500);
        if (!state.Rounds.TryGetValue(record.Round, out var round))
            findings.Error("round", record.Round, JarRuleTexts.RoundUnknown);
        else if (!round.Plan.Draws.Any(draw => draw.Apiary == record.Apiary))
            findings.Error("apiary", record.Apiary, JarRuleTexts.ApiaryNotInRound);
    }

    private static void Check(EarlyStop early, int jars, Findings findings)
    {
        if (jars < 2)
            findings.Error("earlyStop", jars, JarRuleTexts.StopNeedsTwoJars);
        if (!(early.Low is > 0 and < 100))
            findings.Error("low", early.Low, JarRuleTexts.FormatStopLow(Findings.Show(early.Low)));
        if (!(early.High > early.Low && early.High <= 100))
            findings.Error("high", early.High, JarRuleTexts.FormatStopHigh(Findings.Show(early.High), Findings.Show(early.Low)));
        if (early.ErrorChance is not (>= 0.01 and <= 0.4))
            findings.Error("errorChance", early.ErrorChance, JarRuleTexts.FormatStopChance(Findings.Show(early.ErrorChance)));
        if (early.Shape is not (>= 0.05 and <= 1000))
            findings.Error("shape", early.Shape, JarRuleTexts.FormatStopShape(Findings.Show(early.Shape)));
        if (early.BeesPerJar is < 50 or > JarLimits.MostBees)
            findings.Error("beesPerJar", early.BeesPerJar, JarRuleTexts.FormatStopBees(early.BeesPerJar, JarLimits.MostBees));
    }

    internal static void Check(RoundSkip record, BookState state, DateOnly today, Findings findings)
    {
        findings.Day("on", record.On, today);
        if (string.IsNullOrWhiteSpace(record.Reason))
            findings.Error("reason", record.Reason, JarRuleTexts.SkipReasonEmpty);
        findings.Text("reason", record.Reason, 500);
        if (!state.Rounds.TryGetValue(record.Round, out var round))
            findings.Error("round", record.Round, JarRuleTexts.RoundUnknown);
        else if (!round.Plan.Draws.Any(draw => draw.Chosen.Contains(record.Colony) || draw.Reserves.Contains(record.Colony)))
            findings.Error("colony", record.Colony, JarRuleTexts.ColonyNotInRound);
    }
}
