using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;

namespace Foundress.Book.Rules;

internal static class JarRules
{
    internal static void Check(JarRecord record, BookState state, KnowledgeBase knowledge, DateOnly today, Findings findings)
    {
        findings.Day("on", record.On, today);
        CheckMethod(record, knowledge, findings);
        CheckPasses(record, findings);
        CheckBees(record, knowledge, findings);
        if (record.Colony is { } id)
            RecordRules.LivesOn(RecordRules.Known(id, "colony", state, findings), "on", record.On, findings);
        if (record.Round is { } round && !state.Rounds.ContainsKey(round))
            findings.Error("round", round, JarRuleTexts.RoundUnknown);
        if (record.Conditions is { } conditions)
        {
            findings.Range("agitationSeconds", conditions.AgitationSeconds, 0, 7200, QuantityTexts.Seconds);
            findings.Range("settlingSeconds", conditions.SettlingSeconds, 0, 7200, QuantityTexts.Seconds);
            findings.Range("airCelsius", conditions.AirCelsius, -30, 60, QuantityTexts.AirTemperature);
        }

        findings.Text("note", record.Note, 2000);
        CheckTwin(record, state, findings);
    }

    internal static void Check(JarPlaced record, BookState state, Findings findings)
    {
        if (state.Jars.All(jar => jar.Id != record.Jar))
            findings.Error("jar", record.Jar, JarRuleTexts.JarUnknown);
        RecordRules.Known(record.Colony, "colony", state, findings);
    }

    private static void CheckMethod(JarRecord record, KnowledgeBase knowledge, Findings findings)
    {
        var jarMethods = knowledge.Methods.Where(method => method.IsJar).Select(method => method.Id);
        if (!knowledge.Methods.TryGet(record.Method, out var method))
            findings.Error("method", record.Method, JarRuleTexts.FormatMethodUnknown(record.Method, string.Join(", ", jarMethods)));
        else if (!method.IsJar)
            findings.Error("method", record.Method, JarRuleTexts.FormatMethodWithoutJar(method.Name, string.Join(", ", jarMethods)));
    }

    private static void CheckPasses(JarRecord record, Findings findings)
    {
        if (record.Passes.Count is 0 or > JarLimits.MostPasses)
            findings.Error("passes", record.Passes.Count, JarRuleTexts.FormatPassesNumber(JarLimits.MostPasses, record.Passes.Count));
        foreach (var mites in record.Passes)
        {
            if (mites is < 0 or > JarLimits.MostMites)
                findings.Error("mites", mites, JarRuleTexts.FormatMitesNumber(mites, JarLimits.MostMites));
        }
    }

    private static void CheckBees(JarRecord record, KnowledgeBase knowledge, Findings findings)
    {
        var bees = record.Bees;
        if (!(bees.Count is >= 1 and <= JarLimits.MostBees))
        {
            findings.Error("bees", bees.Count, JarRuleTexts.FormatBeesNumber(Findings.Show(bees.Count), JarLimits.MostBees));
            return;
        }

        if (bees.Basis == BeeBasis.Counted && bees.Count != Math.Floor(bees.Count))
            findings.Error("bees", bees.Count, JarRuleTexts.FormatBeesNotCounted(Findings.Show(bees.Count)));
        if (bees.Basis == BeeBasis.Counted ? bees.LogSpread != 0 : !(bees.LogSpread is >= 0 and <= 1))
            findings.Error("logSpread", bees.LogSpread, NotASpread(bees));
        if (bees.Measure is { } measure && measure != JarBees.OwnScoop && !knowledge.JarMeasures.TryGet(measure, out _))
            findings.Error("measure", measure, RuleTexts.FormatMeasureUnknown(measure, string.Join(", ", knowledge.JarMeasures.Ids.Append(JarBees.OwnScoop))));
        CheckSample(bees, findings);
        findings.Range("grams", bees.Grams, 0.1, 1000, QuantityTexts.GramsOfBees);
        findings.Range("milligramsPerBee", bees.MilligramsPerBee, 50, 250, QuantityTexts.MilligramsPerBee);
        if (bees.Count < 100)
            findings.Doubt("bees", bees.Count, JarRuleTexts.FormatFewBees(Findings.Show(bees.Count)));
        else if (bees.Count > 1500)
            findings.Doubt("bees", bees.Count, JarRuleTexts.FormatManyBees(Findings.Show(bees.Count)));
        if (record.Mites > bees.Count)
            findings.Doubt("mites", record.Mites, JarRuleTexts.FormatMoreMitesThanBees(record.Mites, Findings.Show(bees.Count)));
    }

    private static string NotASpread(JarBees bees) => bees.Basis switch
    {
        BeeBasis.Counted => JarRuleTexts.FormatSpreadOfCounted(Findings.Show(bees.LogSpread)),
        BeeBasis.Weighed => JarRuleTexts.FormatSpreadOfWeighed(Findings.Show(bees.LogSpread)),
        _ => JarRuleTexts.FormatSpreadOfAssumed(Findings.Show(bees.LogSpread)),
    };

    private static void CheckSample(JarBees bees, Findings findings)
    {
        if (bees.SampleBees is null && bees.SampleGrams is null)
            return;
        if (bees.SampleBees is not { } counted || bees.SampleGrams is not { } grams)
            findings.Error("sampleBees", bees.SampleBees, JarRuleTexts.SampleTogether);
        else if (bees.Basis != BeeBasis.Weighed || bees.Grams is not { } all)
            findings.Error("sampleGrams", grams, JarRuleTexts.SampleNeedsWeight);
        else if (counted is < 2 or > JarLimits.MostBees)
            findings.Error("sampleBees", counted, JarRuleTexts.FormatSampleBees(counted, JarLimits.MostBees));
        else if (!(grams > 0 && grams <= 1000))
            findings.Error("sampleGrams", grams, JarRuleTexts.FormatSampleGrams(Findings.Show(grams)));
        else if (bees.SampleApart != true && grams > all)
            findings.Error("sampleGrams", grams, JarRuleTexts.FormatSampleHeavier(Findings.Show(grams), Findings.Show(all)));
    }

    private static void CheckTwin(JarRecord record, BookState state, Findings findings)
    {
        if (record.Colony is not { } colony)
            return;
        var twin = state.JarsOf(colony).Any(jar => jar.Facts.On == record.On && jar.Facts.Method == record.Method
            && jar.Facts.Passes.SequenceEqual(record.Passes) && jar.Facts.Bees.Count == record.Bees.Count);
        if (twin)
            findings.Doubt("on", record.On, JarRuleTexts.JarTwin);
    }
}
