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
            findings.Error("round", round, "This round is not in the book.");
        if (record.Conditions is { } conditions)
        {
            findings.Range("agitationSeconds", conditions.AgitationSeconds, 0, 7200, "a time in seconds");
            findings.Range("settlingSeconds", conditions.SettlingSeconds, 0, 7200, "a time in seconds");
            findings.Range("airCelsius", conditions.AirCelsius, -30, 60, "an air temperature in degrees Celsius");
        }

        findings.Text("note", record.Note, 2000);
        CheckTwin(record, state, findings);
    }

    internal static void Check(JarPlaced record, BookState state, Findings findings)
    {
        if (state.Jars.All(jar => jar.Id != record.Jar))
            findings.Error("jar", record.Jar, "This jar is not in the book, or was struck out.");
        RecordRules.Known(record.Colony, "colony", state, findings);
    }

    private static void CheckMethod(JarRecord record, KnowledgeBase knowledge, Findings findings)
    {
        var jarMethods = knowledge.Methods.Where(method => method.IsJar).Select(method => method.Id);
        if (!knowledge.Methods.TryGet(record.Method, out var method))
            findings.Error("method", record.Method, $"'{record.Method}' is not a known counting method. Use one of: {string.Join(", ", jarMethods)}.");
        else if (!method.IsJar)
            findings.Error("method", record.Method, $"{method.Name} does not count mites on a jar of bees. Use one of: {string.Join(", ", jarMethods)}.");
    }

    private static void CheckPasses(JarRecord record, Findings findings)
    {
        if (record.Passes.Count is 0 or > JarLimits.MostPasses)
            findings.Error("passes", record.Passes.Count, $"A jar has 1 to {JarLimits.MostPasses} passes, not {record.Passes.Count}. Give one count for each pass over the same bees.");
        foreach (var mites in record.Passes)
        {
            if (mites is < 0 or > JarLimits.MostMites)
                findings.Error("mites", mites, $"{mites} is not a count of mites. Give a whole number from 0 to {JarLimits.MostMites}.");
        }
    }

    private static void CheckBees(JarRecord record, KnowledgeBase knowledge, Findings findings)
    {
        var bees = record.Bees;
        if (!(bees.Count is >= 1 and <= JarLimits.MostBees))
        {
            findings.Error("bees", bees.Count, $"{Findings.Show(bees.Count)} is not a number of bees in a jar. Give a number from 1 to {JarLimits.MostBees}.");
            return;
        }

        if (bees.Basis == BeeBasis.Counted && bees.Count != Math.Floor(bees.Count))
            findings.Error("bees", bees.Count, $"{Findings.Show(bees.Count)} bees cannot have been counted. Give a whole number, or say that the bees were weighed or assumed.");
        if (bees.Basis == BeeBasis.Counted ? bees.LogSpread != 0 : !(bees.LogSpread is >= 0 and <= 1))
            findings.Error("logSpread", bees.LogSpread, $"{Findings.Show(bees.LogSpread)} is not a spread for {bees.Basis.ToString().ToLowerInvariant()} bees. Counted bees have 0; others 0 to 1.");
        if (bees.Measure is { } measure && measure != JarBees.OwnScoop && !knowledge.JarMeasures.TryGet(measure, out _))
            findings.Error("measure", measure, $"'{measure}' is not a known measure. Use one of: {string.Join(", ", knowledge.JarMeasures.Ids)}, {JarBees.OwnScoop}.");
        CheckSample(bees, findings);
        findings.Range("grams", bees.Grams, 0.1, 1000, "a weight of bees in grams");
        findings.Range("milligramsPerBee", bees.MilligramsPerBee, 50, 250, "the weight of one bee in milligrams");
        if (bees.Count < 100)
            findings.Doubt("bees", bees.Count, $"Only {Findings.Show(bees.Count)} bees: the interval will be very wide. About 300 is usual.");
        else if (bees.Count > 1500)
            findings.Doubt("bees", bees.Count, $"{Findings.Show(bees.Count)} bees is a very full jar. Check the number.");
        if (record.Mites > bees.Count)
            findings.Doubt("mites", record.Mites, $"{record.Mites} mites on {Findings.Show(bees.Count)} bees is more than one a bee. Check both numbers.");
    }

    private static void CheckSample(JarBees bees, Findings findings)
    {
        if (bees.SampleBees is null && bees.SampleGrams is null)
            return;
        if (bees.SampleBees is not { } counted || bees.SampleGrams is not { } grams)
            findings.Error("sampleBees", bees.SampleBees, "The counted bees and their weight go together: give both, or neither.");
        else if (bees.Basis != BeeBasis.Weighed || bees.Grams is not { } all)
            findings.Error("sampleGrams", grams, "A weighed and counted sub-sample belongs to a weighed jar: give the weight of all its bees.");
        else if (counted is < 2 or > JarLimits.MostBees)
            findings.Error("sampleBees", counted, $"{counted} is not a number of bees to learn a bee's weight from. Give a whole number from 2 to {JarLimits.MostBees}; about 100 is usual.");
        else if (!(grams > 0 && grams <= 1000))
            findings.Error("sampleGrams", grams, $"{Findings.Show(grams)} is not a weight of bees in grams. Give a number above 0 and up to 1000.");
        else if (bees.SampleApart != true && grams > all)
            findings.Error("sampleGrams", grams, $"The counted bees weigh {Findings.Show(grams)} g, more than the {Findings.Show(all)} g of all bees they are part of. Check both weights, or say that they were other bees.");
    }

    private static void CheckTwin(JarRecord record, BookState state, Findings findings)
    {
        if (record.Colony is not { } colony)
            return;
        var twin = state.JarsOf(colony).Any(jar => jar.Facts.On == record.On && jar.Facts.Method == record.Method
            && jar.Facts.Passes.SequenceEqual(record.Passes) && jar.Facts.Bees.Count == record.Bees.Count);
        if (twin)
            findings.Doubt("on", record.On, "The book already has this very jar for this colony and day. Keep it only if two jars gave the same counts.");
    }
}
