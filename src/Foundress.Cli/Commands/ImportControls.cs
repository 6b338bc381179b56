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
        var how = new ImportOptions(FileCommandTexts.ControlsAuthor);
        var unknown = new Option<bool>("--keep-unknown") { Description = FileCommandTexts.KeepUnknown };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("controls", FileCommandTexts.Controls) { how.File, how.Rejects, how.Check, unknown, how.Author, data, operation, json };
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
                    around.Error.WriteLine(FileCommandTexts.FormatDoubt(path, use.Rows[0], doubt));
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
        var uses = output.Kept ? FileCommandTexts.FormatUsesImported(output.New) : FileCommandTexts.FormatUsesChecked(output.New);
        text.WriteLine(FileCommandTexts.FormatControlsSummary(
            Plural.Pick(output.New, uses), output.Known, Plural.Pick(output.Rejected, FileCommandTexts.FormatRowsRejected(output.Rejected))));
        ImportOptions.SayRejects(output.RejectFile, text);
    }
}
