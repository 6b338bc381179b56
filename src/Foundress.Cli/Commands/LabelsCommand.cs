using System.CommandLine;
using Foundress.Cli.Running;
using Foundress.Reports.Labels;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress labels</c>: a sheet of labels whose codes open the colonies' pages.</summary>
internal static class LabelsCommand
{
    internal static Command Make(Surroundings around)
    {
        var app = new Option<string>("--app") { Description = "Where the app is opened from the hive.", HelpName = "ADDRESS", Required = true };
        var apiary = new Option<string[]>("--apiary") { Description = "An apiary of the book. May be repeated. Without it: all of the book.", HelpName = "NAME" };
        var file = OutputFile.Option();
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var command = new Command(
            "labels",
            """
            A page of labels to print on A4 or US letter: each has a QR code that opens the page of its colony.

            Example:
              foundress labels --app https://bees.example/ --out labels.html
            """) { app, apiary, file, data, operation };
        command.SetAction(async (parsed, cancellation) =>
        {
            var address = parsed.GetValue(app)!;
            if (LabelSheet.Address(address) is null)
                throw new UsageException($"--app '{address}': write the whole address, for example https://bees.example/.");
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            var labels = LabelSheet.Labels(state, ApiaryArgument.Find(ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []), state), around.Today, address);
            await OutputFile.WriteAsync(LabelSheet.Page(labels), parsed.GetValue(file), around, cancellation);
            return ExitCodes.Fine;
        });
        return command;
    }
}
