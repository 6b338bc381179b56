using System.CommandLine;
using System.Text;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Registering;
using Foundress.Book.Wording;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Reports.Registering;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress register</c>: the register of controls, for an inspector or a file.</summary>
internal static class RegisterCommand
{
    internal static Command Make(Surroundings around)
    {
        var from = new Option<string?>("--from") { Description = BookCommandTexts.RegisterFrom, HelpName = SharedTexts.WordDay };
        var to = new Option<string?>("--to") { Description = BookCommandTexts.RegisterTo, HelpName = SharedTexts.WordDay };
        var apiary = CommonOptions.Apiary();
        var agent = new Option<string?>("--agent") { Description = BookCommandTexts.RegisterAgent, HelpName = "ID" };
        var substances = new Option<bool>("--substances") { Description = BookCommandTexts.RegisterSubstances };
        var format = new Option<string>("--format") { Description = SharedTexts.Format, HelpName = "text|csv|json|html", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "csv", "json", "html");
        var file = OutputFile.Option();
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.JsonFormat();
        var command = new Command("register", BookCommandTexts.Register) { from, to, apiary, agent, substances, format, file, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            DateOnly? first = parsed.GetValue(from) is { } start ? CommonOptions.PlannedDay("--from", start, around) : null;
            DateOnly? last = parsed.GetValue(to) is { } end ? CommonOptions.PlannedDay("--to", end, around) : null;
            if (first is { } begin && last is { } close && begin > close)
                throw new UsageException(SharedTexts.FormatDaysTurned(Say.IsoDay(begin), Say.IsoDay(close)));
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            var knowledge = KnowledgeBase.Load();
            ApiaryId? only = parsed.GetValue(apiary) is { } name ? ApiaryArgument.Find([new ApiaryArgument(name, null)], state)[0] : null;
            var filter = new RegisterFilter(first, last, only, AgentOf(parsed.GetValue(agent), ControlList.Of(state, knowledge)), parsed.GetValue(substances));
            var register = new Registers(book.Ledger.Entries, state, knowledge, around.Today, around.Culture).Of(filter, book.Scribe.Operation == Operations.Demo);
            var written = (parsed.GetValue(json) ? "json" : parsed.GetValue(format)) switch
            {
                "csv" => RegisterCsv.Write(register),
                "json" => RegisterJson.Write(register),
                "html" => RegisterHtml.Page(register),
                _ => Text(register),
            };
            await OutputFile.WriteAsync(written, parsed.GetValue(file), around, cancellation);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static string? AgentOf(string? given, ControlList controls)
    {
        if (given is null || controls.Find(given) is not null)
            return given;
        var named = controls.Named(given);
        return named.Count switch
        {
            1 => named[0].Id,
            0 => given,
            _ => throw new UsageException(BookCommandTexts.FormatRegisterEither(given, named.Select(one => one.Id).Aggregate((one, other) => BookCommandTexts.FormatEither(one, other)))),
        };
    }

    private static string Text(Register register)
    {
        var text = new StringBuilder();
        text.Append(BookCommandTexts.FormatRegisterHead(register.Operation, register.FilterText)).Append('\n');
        foreach (var row in register.Rows)
        {
            text.Append(row.State == RegisterState.Holds ? "- " : "x ").Append(RegisterWords.Period(row)).Append(", ").Append(string.Join(", ", row.Apiaries)).Append(": ")
                .Append(row.Control).Append(", ").Append(RegisterWords.Colonies(row)).Append('\n');
            Line(text, BookCommandTexts.RegisterQuantity, row.Facts.Quantity);
            Line(text, BookCommandTexts.RegisterBatch, row.Facts.Batch);
            Line(text, BookCommandTexts.RegisterWithdrawal, row.IsSubstance ? RegisterWords.Withdrawal(row) : null);
            Line(text, BookCommandTexts.RegisterBy, row.Facts.By);
            Line(text, BookCommandTexts.RegisterReason, row.Reason);
            foreach (var end in row.Ends)
                Line(text, end.Struck is null ? BookCommandTexts.RegisterEnd : BookCommandTexts.RegisterEndStruck, RegisterWords.Ending(end));
            Line(text, BookCommandTexts.RegisterOutcome, row.Outcome);
            Line(text, row.State == RegisterState.Struck ? BookCommandTexts.RegisterStruck : BookCommandTexts.RegisterReplaced, RegisterWords.Strike(row));
        }

        if (register.Rows.Count == 0)
            text.Append(BookCommandTexts.RegisterNone).Append('\n');
        return text.ToString();
    }

    private static void Line(StringBuilder text, string name, string? value)
    {
        if (!string.IsNullOrWhiteSpace(value))
            text.Append("    ").Append(name).Append(": ").Append(value).Append('\n');
    }
}
