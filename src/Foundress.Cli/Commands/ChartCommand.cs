using System.CommandLine;
using System.Globalization;
using Foundress.Book.Records;
using Foundress.Book.Rounds;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Reports.Reporting;
using Foundress.Science.Sampling;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress chart</c>: when a round of jars may stop early.</summary>
internal static class ChartCommand
{
    internal static Command Make(Surroundings around)
    {
        var design = KnowledgeBase.Load().Sampling.Design;
        var low = Number("--low", "A level at which to wait, mites per 100 bees.", null);
        var high = Number("--high", "A level at which to act, mites per 100 bees.", null);
        var error = Number("--error", "Wanted chance of either wrong decision, in 100.", design.ErrorChance.Value);
        var shape = Number("--shape", "Shape k of the spread between colonies: relative variance 1/k.", design.Shape.Value);
        var bees = Number("--bees", "Bees in a jar.", KnowledgeBase.Load().Sampling.BeesPerJar.Value);
        var jars = Number("--jars", "Jars after which the round ends, one from each colony.", KnowledgeBase.Load().Sampling.ColoniesInOneApiary.Value);
        var level = new Option<string[]>("--at") { Description = "A true level at which to say how such rounds end. May be repeated.", HelpName = "LEVEL" };
        var html = new Option<string?>("--out") { Description = "Write the chart as an HTML page to print.", HelpName = "FILE" };
        var json = CommonOptions.Json();
        var command = new Command(
            "chart",
            """
            The chart by which a round may stop early: mites so far at which to stop and wait, or stop and act.
            Wald's sequential test for jars from different colonies, cut off after the last jar; how such rounds end is exact.

            Examples:
              foundress chart --low 1 --high 3 --jars 12
              foundress chart --low 1.5 --high 4.5 --at 3 --out chart.html
            """) { low, high, error, shape, bees, jars, level, html, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var early = new EarlyStop(
                Read(parsed, low, 0.05, 100), Read(parsed, high, 0.05, 100), Read(parsed, error, 1, 40) / 100, Read(parsed, shape, 0.05, 1000), (int)Read(parsed, bees, 50, 5000));
            if (early.High <= early.Low)
                throw new UsageException($"--high {early.High.ToString(CultureInfo.InvariantCulture)}: the level at which to act lies above the one at which to wait, {early.Low.ToString(CultureInfo.InvariantCulture)}.");
            var rule = new StopRule(early, (int)Read(parsed, jars, 1, SequentialAim.MostJarsOfAll));
            var levels = new List<double> { early.Low };
            levels.AddRange((parsed.GetValue(level) ?? []).Select(text => Parse("--at", text, 0, 100)));
            levels.Add(early.High);
            var output = new ChartOutput(early, [.. rule.Lines], [.. levels.Order().Distinct().Select(at => ChartEnd.Of(at, rule.At(at)))],
                design.Precision.Value / 100, [.. rule.Lines.Select(line => rule.PreciseFrom(design.Precision.Value / 100, line.Jars))]);
            if (parsed.GetValue(html) is { } file)
            {
                var part = new ClipboardPart("Any apiary", [.. rule.Lines.Select(_ => string.Empty)], [], rule.Promise(CultureInfo.InvariantCulture), rule.Lines);
                await File.WriteAllTextAsync(file, ClipboardSheet.Write("When a round may stop early", [], [], [part], CultureInfo.InvariantCulture), cancellation);
            }

            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                Write(around.Out, output);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static Option<string> Number(string name, string what, double? usual)
    {
        var option = new Option<string>(name) { Description = what, HelpName = "N", Required = usual is null };
        if (usual is { } value)
            option.DefaultValueFactory = _ => value.ToString(CultureInfo.InvariantCulture);
        return option;
    }

    private static double Read(ParseResult parsed, Option<string> option, double least, double most) => Parse(option.Name, parsed.GetValue(option)!, least, most);

    private static double Parse(string option, string text, double least, double most) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most
            ? number
            : throw new UsageException(string.Create(CultureInfo.InvariantCulture, $"{option} '{text}': write a number from {least} to {most}, with a point for decimals."));

    private static string Whole(int? mites) => mites?.ToString(CultureInfo.InvariantCulture) ?? "-";

    private static void Write(TextWriter text, ChartOutput chart)
    {
        text.WriteLine("jars   stop and wait up to   stop and act from   precise enough from");
        foreach (var (line, precise) in chart.Lines.Zip(chart.PreciseFrom))
            text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{line.Jars,4}   {Whole(line.WaitUpTo),19}   {line.ActFrom,17}   {Whole(precise),19}"));
        text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Precise enough: standard error at most {chart.Precision:0.##} of the mean (Green 1970; Kuno 1969); - where so few colonies cannot give it."));
        text.WriteLine("How such rounds end (exact):");
        foreach (var end in chart.Ends)
            text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  true level {end.Level:0.##} per 100: wait {100 * end.Wait:0.0} %, act {100 * end.Act:0.0} %, {end.AverageJars:0.0} jars on average"));
    }
}
