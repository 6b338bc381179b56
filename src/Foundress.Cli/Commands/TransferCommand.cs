using System.CommandLine;
using System.Globalization;
using Foundress.Accounts;
using Foundress.Accounts.Moving;
using Foundress.Book.Wording;
using Foundress.Cli.Running;
using Foundress.Storage;
using Foundress.Storage.Transfer;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress transfer</c>: copies the whole book from its folder into a PostgreSQL database.</summary>
internal static class TransferCommand
{
    internal static Command Make(Surroundings around)
    {
        var data = CommonOptions.Data();
        var json = CommonOptions.Json();
        var command = new Command(
            "transfer",
            """
            Copy the whole book and its accounts from a folder into a PostgreSQL database, and compare both sides.
            What lies in the folder is only read. Cut off, it can be run again: nothing is added twice.

            Example:
              FOUNDRESS_DATABASE='Host=db.example;Database=foundress;Username=keeper;Password=...' \
              foundress transfer --data ./book
            """) { data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var place = CommonOptions.PlaceOf(parsed.GetValue(data), around);
            if (place.Database is not { } database)
                throw new UsageException($"Name the PostgreSQL database to copy into: {CommonOptions.DatabaseName} SETTING, or the environment variable {CommonOptions.DatabaseVariable}.");
            // A folder whose book was taken along before may still hold its accounts.
            var hasBook = File.Exists(DataFolder.At(place.Directory).Database) || !AccountsDatabase.IsIn(place.Directory);
            var done = hasBook ? await BookTransfer.RunAsync(place.Directory, place.Options(around), cancellation) : [];
            var accounts = await AccountsTransfer.RunAsync(place.Directory, database, around.Time, cancellation);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, new { Operations = done, Accounts = accounts });
            else
                Write(around.Out, done, accounts, database.ToString());
            return done.All(one => one.IsSame) ? ExitCodes.Fine : ExitCodes.SomeRejected;
        });
        return command;
    }

    private static void Write(TextWriter text, IReadOnlyList<OperationTransfer> done, TransferredAccounts? accounts, string database)
    {
        if (done.Count > 0)
            Write(text, done, database);
        if (accounts is not null)
            Write(text, accounts, database);
        text.WriteLine($"From now on name the database at every start ({CommonOptions.DatabaseName} or {CommonOptions.DatabaseVariable}): what is changed in the folder's files later is not in it.");
    }

    private static void Write(TextWriter text, TransferredAccounts accounts, string database)
    {
        if (accounts.WereThere)
        {
            text.WriteLine($"The PostgreSQL database {database} has accounts already; they were left as they are.");
            return;
        }

        text.WriteLine("Accounts: " + string.Join(", ", accounts.Tables.Where(table => table.Rows > 0).Select(table => string.Create(CultureInfo.InvariantCulture, $"{table.Table} {table.Rows}"))) + ".");
        text.WriteLine($"The PostgreSQL database {database} holds as many of each, and each row as it was.");
    }

    private static void Write(TextWriter text, IReadOnlyList<OperationTransfer> done, string database)
    {
        foreach (var one in done)
        {
            text.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{one.Operation}: {Say.Count((int)one.Entries, "entry", "entries")}, {one.Added} of them new in the database."));
            text.WriteLine($"  fingerprint in the folder   {one.Fingerprint}");
            text.WriteLine($"  fingerprint in PostgreSQL   {one.FingerprintThere}");
            foreach (var id in one.Different)
                text.WriteLine($"  {id}: the database holds another entry under this id, which comes first in the book; it was left.");
        }

        text.WriteLine(done.All(one => one.IsSame)
            ? $"The PostgreSQL database {database} holds every entry of the folder, character for character."
            : $"The PostgreSQL database {database} holds every id of the folder, but not everywhere the same entry: see above.");
        text.WriteLine("(A fingerprint is the sum, modulo 2^256, of the SHA-256 of each entry; their order does not count.)");
    }
}
