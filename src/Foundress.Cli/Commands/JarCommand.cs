using System.CommandLine;
using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress jar</c>: reads one jar, with no book.</summary>
internal static class JarCommand
{
    internal static Command Make(Surroundings around)
    {
        var knowledge = KnowledgeBase.Load();
        var policies = knowledge.LinePolicies.Where(one => knowledge.Methods.Any(method => method.IsJar && one.AppliesTo(method.ScaleId))).Select(one => one.Id).ToArray();
        var methods = knowledge.Methods.Where(method => method.IsJar).Select(method => method.Id).ToArray();
        var mites = new Option<string?>("--mites") { Description = JarCommandTexts.Mites, HelpName = "N" };
        var passes = new Option<string?>("--passes") { Description = JarCommandTexts.Passes, HelpName = "N,N" };
        var bees = new Option<string?>("--bees") { Description = JarCommandTexts.Bees, HelpName = "N" };
        var basis = new Option<string?>("--basis") { Description = JarCommandTexts.Basis, HelpName = "BASIS" };
        var measure = new Option<string?>("--measure") { Description = JarCommandTexts.FormatMeasure(string.Join(", ", knowledge.JarMeasures.Ids)), HelpName = "ID" };
        var grams = new Option<string?>("--grams") { Description = JarCommandTexts.Grams, HelpName = "G" };
        var sampleBees = new Option<string?>("--sample-bees") { Description = JarCommandTexts.SampleBees, HelpName = "N" };
        var sampleGrams = new Option<string?>("--sample-grams") { Description = JarCommandTexts.SampleGrams, HelpName = "G" };
        var sampleApart = new Option<bool>("--sample-apart") { Description = JarCommandTexts.SampleApart };
        var method = new Option<string>("--method") { Description = JarCommandTexts.FormatMethod(string.Join(", ", methods)), HelpName = "ID", DefaultValueFactory = _ => methods[0] };
        var line = new Option<string?>("--line") { Description = JarCommandTexts.Line, HelpName = SharedTexts.WordLevel };
        var lines = new Option<string?>("--lines") { Description = JarCommandTexts.FormatLines(string.Join(", ", policies)), HelpName = "ID" };
        var confidence = new Option<string?>("--confidence") { Description = JarCommandTexts.Confidence, HelpName = SharedTexts.WordShare };
        var date = CommonOptions.Day("--date", JarCommandTexts.Date);
        var working = CommonOptions.Working();
        var json = CommonOptions.Json();
        var command = new Command("jar", JarCommandTexts.Description) { mites, passes, bees, basis, measure, grams, sampleBees, sampleGrams, sampleApart, method, line, lines, confidence, date, working, json };
        command.SetAction(parsed =>
        {
            if (MethodField.Read(parsed.GetValue(method)!, methods, out var methodId) is { } problem)
                throw UsageException.OfValue("--method", parsed.GetValue(method)!, problem);
            var jar = new JarRecord(
                CommonOptions.PastDay("--date", parsed.GetValue(date), around), methodId,
                Passes(parsed.GetValue(mites), parsed.GetValue(passes)),
                Bees(parsed.GetValue(bees), parsed.GetValue(basis), parsed.GetValue(measure),
                    JarBeesArgument.ReadWeighed(parsed.GetValue(grams), parsed.GetValue(sampleBees), parsed.GetValue(sampleGrams), parsed.GetValue(sampleApart), knowledge), knowledge));
            var settings = new PolicyRecord(LinePolicy: PolicyOf(parsed.GetValue(lines), policies), Confidence: Share(parsed.GetValue(confidence)));
            var policy = JudgingPolicy.Of(settings, knowledge);
            var reader = new JarReader(knowledge, policy, around.Culture);
            if (parsed.GetValue(line) is not null && parsed.GetValue(lines) is not null)
                throw new UsageException(JarCommandTexts.TwoLines);
            var reading = parsed.GetValue(line) is { } text
                ? reader.Read(jar, JudgingPolicy.Given(Level(text), knowledge))
                : reader.Read(jar, apiary: null);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, JarOutput.Of(reading));
            else
                JarText.Write(around.Out, reading, policy, parsed.GetValue(working), around.Culture);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static JarBees Bees(string? bees, string? basis, string? measure, JarBees? weighed, KnowledgeBase knowledge)
    {
        if (weighed is null)
            return JarBeesArgument.Read(bees, basis, measure, knowledge);
        return bees is null && measure is null && basis is null or "weighed"
            ? weighed
            : throw new UsageException(JarCommandTexts.GramsGiveBees);
    }

    private static IReadOnlyList<int> Passes(string? mites, string? passes)
    {
        if (passes is null)
        {
            if (mites is null)
                throw new UsageException(JarCommandTexts.MitesMissing);
            return MitesField.Read(mites, out var single) is { } wrong ? throw UsageException.OfValue("--mites", mites, wrong) : [single];
        }

        if (PassesField.Read(passes, out var counts) is { } problem)
            throw UsageException.OfValue("--passes", passes, problem);
        if (mites is null)
            return counts;
        if (MitesField.Read(mites, out var total) is { } bad)
            throw UsageException.OfValue("--mites", mites, bad);
        return total == counts.Sum()
            ? counts
            : throw new UsageException(JarCommandTexts.FormatPassesDisagree(passes, counts.Sum(), total));
    }

    private static string? PolicyOf(string? id, string[] policies)
    {
        if (id is null || policies.Contains(id))
            return id;
        throw UsageException.OfValue("--lines", id, JarCommandTexts.FormatSetUnknown(string.Join(", ", policies)));
    }

    private static double Level(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var level) && level is > 0 and <= 100
            ? level
            : throw UsageException.OfValue("--line", text, JarCommandTexts.LevelRange);

    private static double? Share(string? text)
    {
        if (text is null)
            return null;
        return double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share) && share is >= 0.5 and <= 0.999
            ? share
            : throw UsageException.OfValue("--confidence", text, JarCommandTexts.ShareRange);
    }
}
