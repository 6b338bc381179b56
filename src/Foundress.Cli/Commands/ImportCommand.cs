using System.CommandLine;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress import jars</c>: takes jars from a CSV file into the book.</summary>
internal static class ImportCommand
{
    // Few enough that an interruption loses little work, many enough that the disk is not waited for on every row.
    private const int Batch = 1_000;

    internal static Command Make(Surroundings around)
    {
        var import = new Command("import", "Take records from a file into the book.");
        import.Add(Jars(around));
        import.Add(ImportControls.Make(around));
        import.Add(ImportBook.Make(around));
        return import;
    }

    private static Command Jars(Surroundings around)
    {
        var how = new ImportOptions("jars");
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command(
            "jars",
            """
            Import jars from a CSV file. Importing a file again records nothing twice.

            Columns: apiary, colony, date, method, mites, bees; optional: bees_basis, passes, measure, note.
            A row that is wrong stops nothing else: it is named on the error output and written to
            the reject file with its reason, ready to be put right and imported again.

            Example:
              foundress import jars jars.csv --data ./book
            """) { how.File, how.Rejects, how.Check, how.Author, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var writer = how.AuthorOf(parsed);
            var path = parsed.GetValue(how.File)!;
            using var csv = how.Open(parsed);
            using var book = await BookAccess.OpenAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, writer, around, cancellation);
            var rules = JarImportRules.From(KnowledgeBase.Load(), book.Ledger.State.Policy, around.Today);
            var jars = JarImport.Open(csv, book.Ledger, book.Scribe.Operation, rules);
            ImportOptions.SayUnknown(path, jars.UnknownColumns, around.Error);
            var keep = !parsed.GetValue(how.Check);
            using var rejected = new RejectSink(path, parsed.GetValue(how.Rejects), jars.Columns, jars.Separator, around.Error, write: keep);
            var waiting = new List<Entry>(Batch + 3);
            foreach (var row in jars.Rows())
            {
                if (row is RejectedRow bad)
                    rejected.Take(bad);
                else if (keep)
                    waiting.AddRange(((AcceptedRow)row).Records.Select(record => book.Scribe.Write(record.Record, record.Id)));
                if (waiting.Count < Batch)
                    continue;
                await book.Store.AppendAsync(book.Scribe.Operation, waiting, cancellation);
                waiting.Clear();
            }

            await book.Store.AppendAsync(book.Scribe.Operation, waiting, cancellation);
            var output = new ImportOutput(path, keep, jars.New, jars.Known, jars.Rejected, jars.NewApiaries, jars.NewColonies, jars.UnknownColumns, rejected.Path);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                Write(around.Out, output);
            return jars.Rejected > 0 ? ExitCodes.SomeRejected : ExitCodes.Fine;
        });
        return command;
    }

    private static void Write(TextWriter text, ImportOutput output)
    {
        var done = output.Kept ? "imported" : "would be imported";
        text.WriteLine(
            $"{Say.Count(output.New, "jar", "jars")} {done}, {output.Known} already in the book, {output.Rejected} rejected; "
            + $"{Say.Count(output.NewApiaries, "new apiary", "new apiaries")}, {Say.Count(output.NewColonies, "new colony", "new colonies")}.");
        ImportOptions.SayRejects(output.RejectFile, text);
    }
}
