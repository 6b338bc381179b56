using System.CommandLine;
using Foundress.Cli.Running;
using Foundress.Storage;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress restore</c>: puts a backup in the place of the book.</summary>
internal static class RestoreCommand
{
    internal static Command Make(Surroundings around)
    {
        var file = new Argument<string>(SharedTexts.WordFile) { Description = StoreCommandTexts.RestoreFile };
        var data = CommonOptions.Data();
        var json = CommonOptions.Json();
        var command = new Command("restore", StoreCommandTexts.Restore) { file, data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var path = parsed.GetValue(file)!;
            if (!File.Exists(path))
                throw new UsageException(StoreCommandTexts.FormatNoSuchBackup(path));
            var place = CommonOptions.PlaceOf(parsed.GetValue(data), around);
            var result = await BookStore.RestoreAsync(place.Directory, path, place.Options(around), cancellation);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, result);
            else
                around.Out.WriteLine(StoreCommandTexts.FormatRestored(result.Entries, path) + (result.Kept is { } kept ? " " + StoreCommandTexts.FormatBookKeptAs(kept) : string.Empty));
            return ExitCodes.Fine;
        });
        return command;
    }
}
