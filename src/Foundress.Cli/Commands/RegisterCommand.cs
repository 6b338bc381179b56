using System.CommandLine;
using System.Text;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Registering;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Reports.Registering;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress register</c>: the register of controls, for an inspector or a file.</summary>
internal static class RegisterCommand
{
    internal static Command Make(Surroundings around)
    {
        var from = new Option<string?>("--from") { Description = "Uses at work on this day or later (yyyy-MM-dd). Without it: all.", HelpName = "DAY" };
        var to = new Option<string?>("--to") { Description = "Uses begun on this day or earlier (yyyy-MM-dd). Without it: all.", HelpName = "DAY" };
        var apiary = new Option<string?>("--apiary") { Description = "One apiary only. Without it: all.", HelpName = "NAME" };
        var agent = new Option<string?>("--agent") { Description = "One control only, by id or name. Without it: all.", HelpName = "ID" };
        var substances = new Option<bool>("--substances") { Description = "Leave out work on combs, brood and queens." };
        var format = new Option<string>("--format") { Description = "What to write.", HelpName = "text|csv|json|html", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "csv", "json", "html");
        var file = OutputFile.Option();
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = new Option<bool>("--json") { Description = "The same as --format json." };
        var command = new Command(
            "register",
            """
            The register of controls with the fields that Regulation (EU) 2019/6, Article 108, asks for.
            What was struck out or put right stays in it, marked, with the reason. The html page prints on A4 and US letter.

            Examples:
              foundress register --from 2026-01-01
              foundress register --format html --out register.html
            """) { from, to, apiary, agent, substances, format, file, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            DateOnly? first = parsed.GetValue(from) is { } start ? CommonOptions.PlannedDay("--from", start, around) : null;
            DateOnly? last = parsed.GetValue(to) is { } end ? CommonOptions.PlannedDay("--to", end, around) : null;
            if (first > last)
                throw new UsageException($"--from {first:yyyy-MM-dd} lies after --to {last:yyyy-MM-dd}: turn them round.");
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
            _ => throw new UsageException($"--agent '{given}' may be {string.Join(" or ", named.Select(one => one.Id))}: write which."),
        };
    }

    private static string Text(Register register)
    {
        var text = new StringBuilder();
        text.Append(register.Operation).Append(": ").Append(RegisterWords.Title.ToLowerInvariant()).Append(", ").Append(register.FilterText).Append('\n');
        foreach (var row in register.Rows)
        {
            text.Append(row.State == RegisterState.Holds ? "- " : "x ").Append(RegisterWords.Period(row)).Append(", ").Append(string.Join(", ", row.Apiaries)).Append(": ")
                .Append(row.Control).Append(", ").Append(RegisterWords.Colonies(row)).Append('\n');
            Line(text, "each", row.Facts.Quantity);
            Line(text, "batch", row.Facts.Batch);
            Line(text, "withdrawal", row.IsSubstance ? RegisterWords.Withdrawal(row) : null);
            Line(text, "by", row.Facts.By);
            Line(text, "reason", row.Reason);
            foreach (var end in row.Ends)
                Line(text, end.Struck is null ? "end" : "end (struck out)", RegisterWords.Ending(end));
            Line(text, "outcome", row.Outcome);
            Line(text, row.State == RegisterState.Struck ? "struck" : "replaced", RegisterWords.Strike(row));
        }

        if (register.Rows.Count == 0)
            text.Append("No control was recorded in this part of the book.\n");
        return text.ToString();
    }

    private static void Line(StringBuilder text, string name, string? value)
    {
        if (!string.IsNullOrWhiteSpace(value))
            text.Append("    ").Append(name).Append(": ").Append(value).Append('\n');
    }
}
