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
        var file = new Argument<string>("FILE.csv") { Description = "The file." };
        var rejects = new Option<string?>("--rejects") { Description = "Where rows that are not taken are written, with the reason. Without it: beside the file, with .rejected in its name.", HelpName = "FILE" };
        var check = new Option<bool>("--check") { Description = "Only look: say what would be imported and write nothing into the book." };
        var unknown = new Option<bool>("--keep-unknown") { Description = "Keep controls that are not known, as they are written, instead of rejecting their rows." };
        var author = new Option<string>("--author") { Description = "Who writes the controls down.", HelpName = "NAME", DefaultValueFactory = _ => "import" };
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
            """) { file, rejects, check, unknown, author, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            if (NameField.Read(parsed.GetValue(author)!, out var writer) is { } problem)
                throw new UsageException($"--author '{parsed.GetValue(author)}': {problem}");
            var path = parsed.GetValue(file)!;
            using var csv = ImportCommand.Open(path);
            using var book = await BookAccess.OpenAsync(
                CommonOptions.DirectoryOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, writer, around, cancellation);
            var read = ControlImport.Read(csv, book.Ledger, book.Scribe.Operation, KnowledgeBase.Load(), around.Today, parsed.GetValue(unknown));
            foreach (var column in read.UnknownColumns)
                around.Error.WriteLine($"{path}: the column '{column}' is not known and was not read.");
            foreach (var use in read.Uses)
            {
                foreach (var doubt in use.Doubts)
                    around.Error.WriteLine($"{path}, row {use.Rows[0]}: taken, but look at it: {doubt}");
            }

            var keep = !parsed.GetValue(check);
            using var rejected = new RejectSink(path, parsed.GetValue(rejects), read.Columns, read.Separator, around.Error, write: keep);
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
        if (output.RejectFile is { } rejects)
            text.WriteLine($"Rejected rows are in {rejects}: put them right and import that file.");
    }
}
