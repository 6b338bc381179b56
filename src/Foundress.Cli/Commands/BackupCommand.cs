using System.CommandLine;
using Foundress.Cli.Running;
using Foundress.Storage;
using Foundress.Storage.Backups;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress backup</c>: a whole, checked copy of the book.</summary>
internal static class BackupCommand
{
    internal static Command Make(Surroundings around)
    {
        var file = new Argument<string?>("FILE") { Description = "The file to write; it must not exist. Without it: a dated one in the book's folder.", Arity = ArgumentArity.ZeroOrOne };
        var list = new Option<bool>("--list") { Description = "List the dated backups, newest first, and make none." };
        var data = CommonOptions.Data();
        var json = CommonOptions.Json();
        var command = new Command(
            "backup",
            """
            Make a whole, checked copy of the book, also while the app is in use; and of the accounts, where there are
            any, in a second file with .accounts behind its name, which only you can read.

            Example:
              foundress backup /media/stick/book-2026-08-01.db
            """) { file, list, data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var place = CommonOptions.PlaceOf(parsed.GetValue(data), around);
            BookAccess.RequireExisting(place);
            using var store = await BookStore.OpenAsync(place.Directory, place.Options(around) with { BackupAtStart = false }, cancellation);
            if (parsed.GetValue(list))
            {
                var backups = store.Backups();
                if (parsed.GetValue(json))
                    JsonOut.Write(around.Out, backups);
                else if (backups.Count == 0)
                    around.Out.WriteLine("There are no dated backups yet.");
                else
                    foreach (var one in backups)
                        around.Out.WriteLine($"{one.Made:yyyy-MM-dd HH:mm:ss}Z  {one.Bytes,12} bytes  {one.File}");
                return ExitCodes.Fine;
            }

            var made = await store.BackupAsync(parsed.GetValue(file), cancellation);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, made);
            else
                Tell(around.Out, made);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static void Tell(TextWriter text, Backup made)
    {
        text.WriteLine($"Backup made and checked: {made.File} ({made.Bytes} bytes).");
        if (made.Accounts is { } accounts)
            text.WriteLine($"The accounts lie beside it in {accounts}. Keep both together, and that file to yourself: it holds the hashes of passwords.");
    }
}
