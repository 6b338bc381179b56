using System.CommandLine;
using Foundress.Cli.Running;
using Foundress.Reports.Labels;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress labels</c>: a sheet of labels whose codes open the colonies' pages.</summary>
internal static class LabelsCommand
{
    internal static Command Make(Surroundings around)
    {
        var app = new Option<string>("--app") { Description = BookCommandTexts.LabelsApp, HelpName = SharedTexts.WordAddress, Required = true };
        var apiary = CommonOptions.Apiaries();
        var file = OutputFile.Option();
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var command = new Command("labels", BookCommandTexts.Labels) { app, apiary, file, data, operation };
        command.SetAction(async (parsed, cancellation) =>
        {
            var address = parsed.GetValue(app)!;
            if (LabelSheet.Address(address) is null)
                throw UsageException.OfValue("--app", address, SharedTexts.AddressWrong);
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
