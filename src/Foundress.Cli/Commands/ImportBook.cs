using System.CommandLine;
using System.IO.Compression;
using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress import book</c>: takes in every entry of a file that <c>foundress export</c> wrote.</summary>
internal static class ImportBook
{
    private const int Batch = 1_000;
    private const int MostNamed = 20;

    internal static Command Make(Surroundings around)
    {
        var file = new Argument<string>(SharedTexts.WordFile) { Description = FileCommandTexts.BookFile };
        var leave = new Option<bool>("--leave-out-damaged") { Description = FileCommandTexts.LeaveOutDamaged };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("book", FileCommandTexts.Book) { file, leave, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var path = parsed.GetValue(file)!;
            var wanted = parsed.GetValue(operation)!;
            var read = Read(path);
            foreach (var problem in read.Problems.Take(MostNamed))
                around.Error.WriteLine(FileCommandTexts.FormatLineProblem(path, problem.Line, problem.Message));
            if (read.Problems.Count > MostNamed)
                around.Error.WriteLine(FileCommandTexts.FormatMoreDamaged(path, read.Problems.Count - MostNamed));
            if (read.Fault is not null)
                around.Error.WriteLine(FileCommandTexts.FormatFileFault(path, read.Fault));
            if (read.Operation != wanted)
                throw new UsageException(FileCommandTexts.FormatOtherOperation(path, read.Operation, wanted, read.Operation));
            if (!read.IsWhole && !parsed.GetValue(leave))
                throw new UsageException(FileCommandTexts.FormatDamaged(path));
            using var book = await BookAccess.OpenAsync(CommonOptions.PlaceOf(parsed.GetValue(data), around), wanted, BookAccess.UsualAuthor, around, cancellation);
            var accepted = 0;
            foreach (var part in read.Entries.Chunk(Batch))
                accepted += (await book.Store.AppendAsync(wanted, part, cancellation)).Accepted;
            var output = new BookFileOutput(path, wanted, read.Entries.Count, accepted, read.Entries.Count - accepted, read.Problems.Count, null);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                around.Out.WriteLine(FileCommandTexts.FormatBookTaken(Say.Entries(accepted), output.Known!, Plural.Pick(output.LeftOut, FileCommandTexts.FormatDamagedLeftOut(output.LeftOut))));
            return read.IsWhole ? ExitCodes.Fine : ExitCodes.SomeRejected;
        });
        return command;
    }

    private static BookFileContent Read(string path)
    {
        if (!File.Exists(path))
            throw new UsageException(FileCommandTexts.FormatNoSuchFile(path));
        try
        {
            using var file = File.OpenRead(path);
            if (!path.EndsWith(ExportCommand.Packed, StringComparison.OrdinalIgnoreCase))
                return BookFile.Read(file);
            using var unpacked = new GZipStream(file, CompressionMode.Decompress);
            return BookFile.Read(unpacked);
        }
        catch (EntryFormatException error)
        {
            throw new UsageException(FileCommandTexts.FormatNothingTaken(path, error.Message));
        }
        catch (InvalidDataException error)
        {
            throw new UsageException(FileCommandTexts.FormatPackingDamaged(path, error.Message));
        }
    }
}
