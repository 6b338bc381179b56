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
        var import = new Command("import", FileCommandTexts.Import);
        import.Add(Jars(around));
        import.Add(ImportControls.Make(around));
        import.Add(ImportBook.Make(around));
        return import;
    }

    private static Command Jars(Surroundings around)
    {
        var how = new ImportOptions(FileCommandTexts.JarsAuthor);
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("jars", FileCommandTexts.Jars) { how.File, how.Rejects, how.Check, how.Author, data, operation, json };
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
        var (jars, apiaries, colonies) = (
            Say.Jars(output.New),
            Plural.Pick(output.NewApiaries, FileCommandTexts.FormatNewApiaries(output.NewApiaries)),
            Plural.Pick(output.NewColonies, FileCommandTexts.FormatNewColonies(output.NewColonies)));
        text.WriteLine(output.Kept
            ? FileCommandTexts.FormatJarsImported(jars, output.Known, output.Rejected, apiaries, colonies)
            : FileCommandTexts.FormatJarsChecked(jars, output.Known, output.Rejected, apiaries, colonies));
        ImportOptions.SayRejects(output.RejectFile, text);
    }
}
