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
        var file = new Argument<string>("FILE") { Description = "The backup; it is only read." };
        var bookOnly = new Option<bool>("--book-only") { Description = "Leave accounts as they are, also where the backup has some beside it." };
        var data = CommonOptions.Data();
        var json = CommonOptions.Json();
        var command = new Command(
            "restore",
            """
            Put a backup in the place of the book. The book as it was is kept among the backups.
            With --database the backup goes into a PostgreSQL database that holds no entries.
            Accounts that lie beside it (FILE.accounts) are put back too, as they were when it was made.

            Example:
              foundress restore /media/stick/book-2026-08-01.db
            """) { file, bookOnly, data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var path = parsed.GetValue(file)!;
            if (!File.Exists(path))
                throw new UsageException($"There is no file '{path}'. Name the backup to restore; foundress backup --list shows the dated ones.");
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
        text.WriteLine($"Restored {result.Entries} entries from {path}.{(result.Kept is { } kept ? $" The book as it was is kept as {kept}." : string.Empty)}");
        text.WriteLine($"fingerprint of backup and book  {result.Fingerprint}");
        if (people is not null)
        {
            text.WriteLine($"Accounts restored: {people.People}.{(people.Kept is { } were ? $" Those there were are kept as {were}." : string.Empty)}");
            text.WriteLine("They are as they were then: whoever was removed, and every device taken off since, is in again, and passwords are the old ones. Look through People and devices. All sign-ins were ended and open links withdrawn.");
        }
        else if (accountsLeft)
        {
            text.WriteLine("Accounts were left as they are.");
        }
    }
}
