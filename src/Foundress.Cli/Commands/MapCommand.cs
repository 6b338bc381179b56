using System.CommandLine;
using Foundress.Cli.Running;
using Foundress.Reports.Exports;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress map</c>: the apiaries as GeoJSON.</summary>
internal static class MapCommand
{
    internal static Command Make(Surroundings around)
    {
        var file = OutputFile.Option();
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var command = new Command("map", BookCommandTexts.Map) { file, data, operation };
        command.SetAction(async (parsed, cancellation) =>
        {
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            await OutputFile.WriteAsync(ApiaryGeoJson.Write(book.Ledger.State, around.Today), parsed.GetValue(file), around, cancellation);
            return ExitCodes.Fine;
        });
        return command;
    }
}
