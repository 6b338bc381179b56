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
            var people = accounts is null ? null : await PutAsync(accounts, result.Kept, around);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, new { result.Entries, result.Fingerprint, result.Kept, result.WasDamaged, Accounts = people });
            else
                Tell(around.Out, path, result, people, people is null && await AccountsDatabase.ExistAsync(place.Directory, place.Database, cancellation));
            return ExitCodes.Fine;
        });
        return command;
    }

    private static async Task<RestoredAccounts> PutAsync(AccountsRestore accounts, string? bookKept, Surroundings around)
    {
        try
        {
            return await accounts.PutAsync(bookKept, CancellationToken.None);
        }
        catch (Exception error) when (error is StorageException or AccountsException)
        {
            // A server started now would find no accounts, or the old ones, and say nothing of it.
            around.Error.WriteLine(StoreCommandTexts.AccountsAreNotIn);
            throw;
        }
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
