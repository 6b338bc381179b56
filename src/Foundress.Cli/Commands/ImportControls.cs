using System.CommandLine;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress import controls</c>: takes uses of controls from a CSV file into the book.</summary>
internal static class ImportControls
{
    internal static Command Make(Surroundings around)
    {
        var how = new ImportOptions("controls");
        var unknown = new Option<bool>("--keep-unknown") { Description = "Keep controls that are not known, as they are written, instead of rejecting their rows." };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command(
            "controls",
            """
            Import controls (treatments) from a CSV file. Importing a file again records nothing twice.

            Columns: apiary, colony, agent, start; optional: end, ending, product, quantity, batch, supplier,
            proof_of_purchase, given_by, prescriber, withdrawal_days, reason, weather, note.
            Rows that differ in the colony alone are one use; several colonies stand with semicolons between
            them, or as "all". Apiaries and colonies must be in the book.

            Example:
              foundress import controls controls.csv --data ./book
            """) { how.File, how.Rejects, how.Check, unknown, how.Author, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var writer = how.AuthorOf(parsed);
            var path = parsed.GetValue(how.File)!;
            using var csv = how.Open(parsed);
            using var book = await BookAccess.OpenAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, writer, around, cancellation);
            var read = ControlImport.Read(csv, book.Ledger, book.Scribe.Operation, KnowledgeBase.Load(), around.Today, parsed.GetValue(unknown));
            ImportOptions.SayUnknown(path, read.UnknownColumns, around.Error);
            foreach (var use in read.Uses)
            {
                foreach (var doubt in use.Doubts)
                    around.Error.WriteLine($"{path}, row {use.Rows[0]}: taken, but look at it: {doubt}");
            }

            var keep = !parsed.GetValue(how.Check);
            using var rejected = new RejectSink(path, parsed.GetValue(how.Rejects), read.Columns, read.Separator, around.Error, write: keep);
            foreach (var row in read.Rejected)
                rejected.Take(row);
            if (keep)
            {
                Entry[] entries = [.. read.Uses.SelectMany(use => use.Records).Select(record => book.Scribe.Write(record.Record, record.Id))];
                await book.Store.AppendAsync(book.Scribe.Operation, entries, cancellation);
            }

            var output = new ControlImportOutput(path, keep, read.Uses.Count(use => !use.Known), read.Uses.Count(use => use.Known), read.Rejected.Count, read.UnknownColumns, rejected.Path);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                Write(around.Out, output);
            return read.Rejected.Count > 0 ? ExitCodes.SomeRejected : ExitCodes.Fine;
        });
        return command;
    }

    private static void Write(TextWriter text, ControlImportOutput output)
    {
        text.WriteLine($"{Say.Count(output.New, "use", "uses")} of controls {(output.Kept ? "imported" : "would be imported")}, {output.Known} already in the book; {Say.Count(output.Rejected, "row", "rows")} rejected.");
        ImportOptions.SayRejects(output.RejectFile, text);
    }
}
