using System.CommandLine;
using Foundress.Accounts;
using Foundress.Accounts.Moving;
using Foundress.Cli.Running;
using Foundress.Storage;
using Foundress.Storage.Backups;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress restore</c>: puts a backup in the place of the book.</summary>
internal static class RestoreCommand
{
    internal static Command Make(Surroundings around)
    {
        var file = new Argument<string>(SharedTexts.WordFile) { Description = StoreCommandTexts.RestoreFile };
        var bookOnly = new Option<bool>("--book-only") { Description = StoreCommandTexts.RestoreBookOnly };
        var data = CommonOptions.Data();
        var json = CommonOptions.Json();
        var command = new Command("restore", StoreCommandTexts.Restore) { file, bookOnly, data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var path = parsed.GetValue(file)!;
            if (!File.Exists(path))
                throw new UsageException(StoreCommandTexts.FormatNoSuchBackup(path));
            var place = CommonOptions.PlaceOf(parsed.GetValue(data), around);
            // Looked at before the book is touched.
            using var accounts = parsed.GetValue(bookOnly) ? null : await AccountsRestore.TakeAsync(path, place.Directory, place.Database, around.Time, cancellation);
            var result = await BookStore.RestoreAsync(place.Directory, path, place.Options(around), cancellation);
            var people = accounts is null ? null : await accounts.PutAsync(result.Kept, CancellationToken.None);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, new { result.Entries, result.Fingerprint, result.Kept, result.WasDamaged, Accounts = people });
            else
                Tell(around.Out, path, result, people, people is null && await AccountsDatabase.ExistAsync(place.Directory, place.Database, cancellation));
            return ExitCodes.Fine;
        });
        return command;
    }

    private static void Tell(TextWriter text, string path, RestoreResult result, RestoredAccounts? people, bool accountsLeft)
    {
        text.WriteLine(StoreCommandTexts.FormatRestored(result.Entries, path) + (result.Kept is { } kept ? " " + StoreCommandTexts.FormatBookKeptAs(kept) : string.Empty));
        text.WriteLine(StoreCommandTexts.FormatFingerprintOfBoth(result.Fingerprint));
        if (people is not null)
        {
            text.WriteLine(StoreCommandTexts.FormatAccountsRestored(people.People) + (people.Kept is { } were ? " " + StoreCommandTexts.FormatAccountsKeptAs(were) : string.Empty));
            text.WriteLine(StoreCommandTexts.AccountsAreOfThen);
        }
        else if (accountsLeft)
        {
            text.WriteLine(StoreCommandTexts.AccountsLeft);
        }
    }
}
