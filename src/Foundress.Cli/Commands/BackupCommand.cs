using System.CommandLine;
using Foundress.Book.Wording;
using Foundress.Cli.Running;
using Foundress.Storage;
using Foundress.Storage.Backups;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress backup</c>: a whole, checked copy of the book.</summary>
internal static class BackupCommand
{
    internal static Command Make(Surroundings around)
    {
        var file = new Argument<string?>(SharedTexts.WordFile) { Description = StoreCommandTexts.BackupFile, Arity = ArgumentArity.ZeroOrOne };
        var list = new Option<bool>("--list") { Description = StoreCommandTexts.BackupList };
        var data = CommonOptions.Data();
        var json = CommonOptions.Json();
        var command = new Command("backup", StoreCommandTexts.Backup) { file, list, data, json };
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
                    around.Out.WriteLine(StoreCommandTexts.NoBackups);
                else
                    foreach (var one in backups)
                        around.Out.WriteLine(StoreCommandTexts.FormatBackupRow($"{Say.MomentUtc(one.Made),-23}", $"{one.Bytes,12}", one.File));
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
        text.WriteLine(StoreCommandTexts.FormatBackupMade(made.File, made.Bytes));
        if (made.Accounts is { } accounts)
            text.WriteLine(StoreCommandTexts.FormatAccountsBeside(accounts));
    }
}
