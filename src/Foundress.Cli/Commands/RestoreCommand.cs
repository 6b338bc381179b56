using System.CommandLine;
using Foundress.Cli.Running;
using Foundress.Storage;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress restore</c>: puts a backup in the place of the book.</summary>
internal static class RestoreCommand
{
    internal static Command Make(Surroundings around)
    {
        var file = new Argument<string>("FILE") { Description = "The backup; it is only read." };
        var data = CommonOptions.Data();
        var json = CommonOptions.Json();
        var command = new Command(
            "restore",
            """
            Put a backup in the place of the book. The book as it was is kept among the backups.
            With --database the backup goes into a PostgreSQL database that holds no entries.

            Example:
              foundress restore /media/stick/book-2026-08-01.db
            """) { file, data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var path = parsed.GetValue(file)!;
            if (!File.Exists(path))
                throw new UsageException($"There is no file '{path}'. Name the backup to restore; foundress backup --list shows the dated ones.");
            var place = CommonOptions.PlaceOf(parsed.GetValue(data), around);
            var result = await BookStore.RestoreAsync(place.Directory, path, place.Options(around), cancellation);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, result);
            else
                around.Out.WriteLine($"Restored {result.Entries} entries from {path}.{(result.Kept is { } kept ? $" The book as it was is kept as {kept}." : string.Empty)}");
            return ExitCodes.Fine;
        });
        return command;
    }
}
