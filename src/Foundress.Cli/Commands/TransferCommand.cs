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
        var command = new Command("transfer", StoreCommandTexts.Transfer) { data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var place = CommonOptions.PlaceOf(parsed.GetValue(data), around);
            if (place.Database is not { } database)
                throw new UsageException(StoreCommandTexts.FormatNameTheDatabase(CommonOptions.DatabaseName, CommonOptions.DatabaseVariable));
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
        text.WriteLine(StoreCommandTexts.FormatFromNowOn(CommonOptions.DatabaseName, CommonOptions.DatabaseVariable));
    }

    private static void Write(TextWriter text, TransferredAccounts accounts, string database)
    {
        if (accounts.WereThere)
        {
            text.WriteLine(StoreCommandTexts.FormatAccountsWereThere(database));
            return;
        }

        text.WriteLine(StoreCommandTexts.FormatAccountsMoved(string.Join(", ", accounts.Tables.Where(table => table.Rows > 0).Select(table => string.Create(CultureInfo.InvariantCulture, $"{table.Table} {table.Rows}")))));
        text.WriteLine(StoreCommandTexts.FormatAccountsSame(database));
    }

    private static void Write(TextWriter text, IReadOnlyList<OperationTransfer> done, string database)
    {
        foreach (var one in done)
        {
            text.WriteLine(StoreCommandTexts.FormatTransferred(one.Operation, Say.Entries((int)one.Entries), one.Added));
            text.WriteLine("  " + StoreCommandTexts.FormatFingerprintHere(one.Fingerprint));
            text.WriteLine("  " + StoreCommandTexts.FormatFingerprintThere(one.FingerprintThere));
            foreach (var id in one.Different)
                text.WriteLine("  " + StoreCommandTexts.FormatOtherEntryThere(id));
        }

        text.WriteLine(done.All(one => one.IsSame)
            ? StoreCommandTexts.FormatTransferSame(database)
            : StoreCommandTexts.FormatTransferDiffers(database));
        text.WriteLine(StoreCommandTexts.WhatAFingerprintIs);
    }
}
