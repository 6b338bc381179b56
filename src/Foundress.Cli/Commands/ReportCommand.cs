using System.CommandLine;
using Foundress.Book.Journal;
using Foundress.Book.Reporting;
using Foundress.Book.Wording;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Reports.Reporting;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress report</c>: what the book says of a stretch of time, as text, JSON or a page that prints well.</summary>
internal static class ReportCommand
{
    internal static Command Make(Surroundings around)
    {
        var from = new Option<string?>("--from") { Description = BookCommandTexts.ReportFrom, HelpName = SharedTexts.WordDay };
        var to = CommonOptions.Day("--to", BookCommandTexts.ReportTo);
        var apiary = CommonOptions.Apiary();
        var format = new Option<string>("--format") { Description = SharedTexts.Format, HelpName = "text|json|html", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "json", "html");
        var file = OutputFile.Option();
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.JsonFormat();
        var command = new Command("report", BookCommandTexts.Report) { from, to, apiary, format, file, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var last = CommonOptions.PastDay("--to", parsed.GetValue(to), around);
            var first = parsed.GetValue(from) is { } text ? CommonOptions.PastDay("--from", text, around) : last.AddYears(-1).AddDays(1);
            if (first > last)
                throw new UsageException(SharedTexts.FormatDaysTurned(Say.IsoDay(first), Say.IsoDay(last)));
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
            await OutputFile.WriteAsync(written, parsed.GetValue(file), around, cancellation);
            return ExitCodes.Fine;
        });
        return command;
    }
}
