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
        var low = Number("--low", RoundCommandTexts.ChartLow, null);
        var high = Number("--high", RoundCommandTexts.ChartHigh, null);
        var error = Number("--error", RoundCommandTexts.ChartError, design.ErrorChance.Value);
        var shape = Number("--shape", RoundCommandTexts.ChartShape, design.Shape.Value);
        var bees = Number("--bees", RoundCommandTexts.ChartBees, KnowledgeBase.Load().Sampling.BeesPerJar.Value);
        var jars = Number("--jars", RoundCommandTexts.ChartJars, KnowledgeBase.Load().Sampling.ColoniesInOneApiary.Value);
        var level = new Option<string[]>("--at") { Description = RoundCommandTexts.ChartAt, HelpName = SharedTexts.WordLevel };
        var html = new Option<string?>("--out") { Description = RoundCommandTexts.ChartOut, HelpName = SharedTexts.WordFile };
        var json = CommonOptions.Json();
        var command = new Command("chart", RoundCommandTexts.Chart) { low, high, error, shape, bees, jars, level, html, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var early = new EarlyStop(
                Read(parsed, low, 0.05, 100), Read(parsed, high, 0.05, 100), Read(parsed, error, 1, 40) / 100, Read(parsed, shape, 0.05, 1000), (int)Read(parsed, bees, 50, 5000));
            if (early.High <= early.Low)
                throw new UsageException(RoundCommandTexts.FormatChartHighBelowLow(early.High.ToString(CultureInfo.InvariantCulture), early.Low.ToString(CultureInfo.InvariantCulture)));
            var rule = new StopRule(early, (int)Read(parsed, jars, 1, SequentialAim.MostJarsOfAll));
            var levels = new List<double> { early.Low };
            levels.AddRange((parsed.GetValue(level) ?? []).Select(text => Parse("--at", text, 0, 100)));
            levels.Add(early.High);
            var output = new ChartOutput(early, [.. rule.Lines], [.. levels.Order().Distinct().Select(at => ChartEnd.Of(at, rule.At(at)))],
                design.Precision.Value / 100, [.. rule.Lines.Select(line => rule.PreciseFrom(design.Precision.Value / 100, line.Jars))]);
            if (parsed.GetValue(html) is { } file)
            {
                var part = new ClipboardPart(RoundCommandTexts.AnyApiary, [.. rule.Lines.Select(_ => string.Empty)], [], rule.Promise(around.Culture), rule.Lines);
                await File.WriteAllTextAsync(file, ClipboardSheet.Write(RoundCommandTexts.ChartTitle, [], [], [part], around.Culture), cancellation);
            }

            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                Write(around.Out, output, around.Culture);
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
            : throw UsageException.OfValue(option, text, RoundCommandTexts.FormatNumberRange(least.ToString(CultureInfo.InvariantCulture), most.ToString(CultureInfo.InvariantCulture)));

    private static string Whole(int? mites) => mites?.ToString(CultureInfo.InvariantCulture) ?? "-";

    private static void Write(TextWriter text, ChartOutput chart, CultureInfo culture)
    {
        TextTable.Write(
            text, indent: 0, gap: 3,
            [RoundCommandTexts.HeadJars, RoundCommandTexts.HeadWaitUpTo, RoundCommandTexts.HeadActFrom, RoundCommandTexts.HeadPreciseFrom],
            chart.Lines.Zip(chart.PreciseFrom, (line, precise) => (string[])[Whole(line.Jars), Whole(line.WaitUpTo), Whole(line.ActFrom), Whole(precise)]));
        text.WriteLine(RoundCommandTexts.FormatChartPrecision(chart.Precision.ToString("0.##", culture)));
        text.WriteLine(RoundCommandTexts.ChartEnds);
        foreach (var end in chart.Ends)
            text.WriteLine("  " + RoundCommandTexts.FormatChartEnd(end.Level.ToString("0.##", culture), Tenths(100 * end.Wait), Tenths(100 * end.Act), Tenths(end.AverageJars)));

        string Tenths(double value) => value.ToString("0.0", culture);
    }
}
