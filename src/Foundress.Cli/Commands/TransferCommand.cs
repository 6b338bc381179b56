using System.CommandLine;
using Foundress.Book.Wording;
using Foundress.Cli.Running;
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
            var done = await BookTransfer.RunAsync(place.Directory, place.Options(around), cancellation);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, done);
            else
                Write(around.Out, done, database.ToString());
            return done.All(one => one.IsSame) ? ExitCodes.Fine : ExitCodes.SomeRejected;
        });
        return command;
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
        text.WriteLine(StoreCommandTexts.FormatFromNowOn(CommonOptions.DatabaseName, CommonOptions.DatabaseVariable));
    }
}
