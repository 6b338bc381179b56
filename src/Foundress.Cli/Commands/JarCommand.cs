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
        var mites = new Option<string?>("--mites") { Description = "Mites counted in all passes together.", HelpName = "N" };
        var passes = new Option<string?>("--passes") { Description = "Mites of each pass over the same bees, first to last: 18,2.", HelpName = "N,N" };
        var bees = new Option<string?>("--bees") { Description = "Bees in the jar. Without it the usual number of the measure is taken.", HelpName = "N" };
        var basis = new Option<string?>("--basis") { Description = "How the number of bees is known: counted, weighed or assumed. [default: counted, or assumed with --measure]", HelpName = "BASIS" };
        var measure = new Option<string?>("--measure") { Description = $"The measure of bees that was taken: {string.Join(", ", knowledge.JarMeasures.Ids)}.", HelpName = "ID" };
        var grams = new Option<string?>("--grams") { Description = "Weight of the bees in grams, instead of --bees.", HelpName = "G" };
        var sampleBees = new Option<string?>("--sample-bees") { Description = "With --grams: bees of the jar that were counted and weighed. Without them a usual weight of a bee is taken.", HelpName = "N" };
        var sampleGrams = new Option<string?>("--sample-grams") { Description = "What the counted bees weigh.", HelpName = "G" };
        var sampleApart = new Option<bool>("--sample-apart") { Description = "The counted bees were other bees of the place and day, not part of the jar." };
        var method = new Option<string>("--method") { Description = $"Counting method: {string.Join(", ", methods)}.", HelpName = "ID", DefaultValueFactory = _ => methods[0] };
        var line = new Option<string?>("--line") { Description = "Line to judge by, in mites per 100 bees. Without it: the usual lines for the day.", HelpName = "LEVEL" };
        var lines = new Option<string?>("--lines") { Description = $"Set of lines to judge by: {string.Join(", ", policies)}.", HelpName = "ID" };
        var confidence = new Option<string?>("--confidence") { Description = "Confidence of the interval, 0.5 to 0.999. [default: 0.95]", HelpName = "SHARE" };
        var date = CommonOptions.Day("--date", "Day the bees were taken, for the lines of the season");
        var working = new Option<bool>("--working") { Description = "Show how it was worked out." };
        var json = CommonOptions.Json();
        var command = new Command(
            "jar",
            """
            Read one jar: level, interval, and the chance of being over the line.

            Examples:
              foundress jar --mites 14 --bees 320 --line 3
              foundress jar --passes 18,2 --bees 310 --method sugar-shake --json
              foundress jar --mites 9 --measure half-cup-us
              foundress jar --mites 9 --grams 31.5 --sample-bees 100 --sample-grams 10.4
            """) { mites, passes, bees, basis, measure, grams, sampleBees, sampleGrams, sampleApart, method, line, lines, confidence, date, working, json };
        command.SetAction(parsed =>
        {
            if (MethodField.Read(parsed.GetValue(method)!, methods, out var methodId) is { } problem)
                throw new UsageException($"--method '{parsed.GetValue(method)}': {problem}");
            var jar = new JarRecord(
                CommonOptions.PastDay("--date", parsed.GetValue(date), around), methodId,
                Passes(parsed.GetValue(mites), parsed.GetValue(passes)),
                Bees(parsed.GetValue(bees), parsed.GetValue(basis), parsed.GetValue(measure),
                    JarBeesArgument.ReadWeighed(parsed.GetValue(grams), parsed.GetValue(sampleBees), parsed.GetValue(sampleGrams), parsed.GetValue(sampleApart), knowledge), knowledge));
            var settings = new PolicyRecord(LinePolicy: PolicyOf(parsed.GetValue(lines), policies), Confidence: Share(parsed.GetValue(confidence)));
            var policy = JudgingPolicy.Of(settings, knowledge);
            var reader = new JarReader(knowledge, policy, around.Culture);
            if (parsed.GetValue(line) is not null && parsed.GetValue(lines) is not null)
                throw new UsageException("--line and --lines are given: keep one of them.");
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
            : throw new UsageException("--grams gives the number of bees: leave out --bees, --measure and --basis.");
    }

    private static IReadOnlyList<int> Passes(string? mites, string? passes)
    {
        if (passes is null)
        {
            if (mites is null)
                throw new UsageException("--mites is missing: give the number of mites counted, 0 when none were found.");
            return MitesField.Read(mites, out var single) is { } wrong ? throw new UsageException($"--mites '{mites}': {wrong}") : [single];
        }

        if (PassesField.Read(passes, out var counts) is { } problem)
            throw new UsageException($"--passes '{passes}': {problem}");
        if (mites is null)
            return counts;
        if (MitesField.Read(mites, out var total) is { } bad)
            throw new UsageException($"--mites '{mites}': {bad}");
        return total == counts.Sum()
            ? counts
            : throw new UsageException($"--passes '{passes}' add up to {counts.Sum()}, but --mites says {total}: one of the two is wrong.");
    }

    private static string? PolicyOf(string? id, string[] policies)
    {
        if (id is null || policies.Contains(id))
            return id;
        throw new UsageException($"--lines '{id}': there is no such set. Known are {string.Join(", ", policies)}.");
    }

    private static double Level(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var level) && level is > 0 and <= 100
            ? level
            : throw new UsageException($"--line '{text}': Write a level above 0 and up to 100 mites per 100 bees, with a decimal point, for example 3 or 2.5.");

    private static double? Share(string? text)
    {
        if (text is null)
            return null;
        return double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share) && share is >= 0.5 and <= 0.999
            ? share
            : throw new UsageException($"--confidence '{text}': Write a share from 0.5 to 0.999, for example 0.9.");
    }
}
