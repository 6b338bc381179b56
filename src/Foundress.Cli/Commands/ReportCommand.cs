using System.CommandLine;
using System.Text;
using Foundress.Book.Journal;
using Foundress.Book.Reporting;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Reports.Reporting;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress report</c>: what the book says of a stretch of time, as text, JSON or a page that prints well.</summary>
internal static class ReportCommand
{
    internal static Command Make(Surroundings around)
    {
        var from = new Option<string?>("--from") { Description = "First day (yyyy-MM-dd). Without it: a year before the last.", HelpName = "DAY" };
        var to = CommonOptions.Day("--to", "Last day, from which the report speaks");
        var apiary = new Option<string?>("--apiary") { Description = "One apiary only. Without it: all.", HelpName = "NAME" };
        var format = new Option<string>("--format") { Description = "What to write.", HelpName = "text|json|html", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "json", "html");
        var file = new Option<string?>("--out") { Description = "The file to write. Without it: standard output.", HelpName = "FILE" };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = new Option<bool>("--json") { Description = "The same as --format json." };
        var command = new Command(
            "report",
            """
            Report on the book: each apiary's season, its jars added up, and every colony's jars.

            Examples:
              foundress report --from 2026-01-01 --to 2026-09-01
              foundress report --format html --out season.html
            """) { from, to, apiary, format, file, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var last = CommonOptions.PastDay("--to", parsed.GetValue(to), around);
            var first = parsed.GetValue(from) is { } text ? CommonOptions.PastDay("--from", text, around) : last.AddYears(-1).AddDays(1);
            if (first > last)
                throw new UsageException($"--from {first:yyyy-MM-dd} lies after --to {last:yyyy-MM-dd}: turn them round.");
            var form = parsed.GetValue(json) ? "json" : parsed.GetValue(format);
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            ApiaryId? only = parsed.GetValue(apiary) is { } name ? ApiaryArgument.Find([new ApiaryArgument(name, null)], state)[0] : null;
            var report = new ReportBuilder(state, KnowledgeBase.Load(), around.Culture)
                .Build(first, last, book.Scribe.Operation == Operations.Demo, only);
            var written = form switch
            {
                "json" => JsonReport.Write(report),
                "html" => HtmlReport.Write(report, around.Culture),
                _ => TextReport.Write(report, around.Culture),
            };
            if (parsed.GetValue(file) is { } path)
                await File.WriteAllTextAsync(path, written, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), cancellation);
            else
                await around.Out.WriteAsync(written.EndsWith('\n') ? written : written + "\n");
            return ExitCodes.Fine;
        });
        return command;
    }
}
