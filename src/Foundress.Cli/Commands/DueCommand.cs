using System.CommandLine;
using Foundress.Book.Dues;
using Foundress.Book.Seasons;
using Foundress.Calendar;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Reports.Labels;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress due</c>: everything that is due over all apiaries.</summary>
internal static class DueCommand
{
    internal static Command Make(Surroundings around)
    {
        var apiary = CommonOptions.Apiaries();
        var format = new Option<string>("--format") { Description = BookCommandTexts.DueFormat, HelpName = "text|json|ics", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "json", "ics");
        var app = new Option<string?>("--app") { Description = BookCommandTexts.DueApp, HelpName = SharedTexts.WordAddress };
        var file = OutputFile.Option();
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.JsonFormat();
        var command = new Command("due", BookCommandTexts.Due) { apiary, format, app, file, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            Uri? address = null;
            if (parsed.GetValue(app) is { } given)
                address = LabelSheet.Address(given) ?? throw UsageException.OfValue("--app", given, SharedTexts.AddressWrong);
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            var wanted = ApiaryArgument.Find(ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []), state).ToHashSet();
            var knowledge = KnowledgeBase.Load();
            DueItem[] items = [.. new DueItems(state, knowledge, new SeasonStrips(state, knowledge, around.Culture)).On(around.Today).Where(item => wanted.Contains(item.Apiary))];
            switch (parsed.GetValue(json) ? "json" : parsed.GetValue(format))
            {
                case "ics":
                    await OutputFile.WriteAsync(DueCalendar.Write(items, state, around.Time.GetUtcNow(), address), parsed.GetValue(file), around, cancellation);
                    break;
                case "json":
                    await OutputFile.WriteAsync(JsonOut.Text(items.Select(item => DueOutput.Of(item, state)).ToArray()), parsed.GetValue(file), around, cancellation);
                    break;
                default:
                    await OutputFile.WriteAsync(DueText.Of(items, state), parsed.GetValue(file), around, cancellation);
                    break;
            }

            return ExitCodes.Fine;
        });
        return command;
    }
}
