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
        var file = new Argument<string>("FILE") { Description = "The file that `foundress export` wrote, packed or not." };
        var leave = new Option<bool>("--leave-out-damaged") { Description = "Take in what can be read of a damaged file. Without it, a damaged file is refused whole." };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command(
            "book",
            """
            Take in every entry of a whole-book file. Entries the book has already are passed over, so a file
            may be taken in again, or into a book that has gone on since.

            A file with a damaged line, or one that was changed or cut off, is refused whole: the lines are
            named and nothing is taken in.

            Example:
              foundress import book my-book.jsonl.gz --data ./book
            """) { file, leave, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var path = parsed.GetValue(file)!;
            var wanted = parsed.GetValue(operation)!;
            var read = Read(path);
            foreach (var problem in read.Problems.Take(MostNamed))
                around.Error.WriteLine($"{path}, line {problem.Line}: {problem.Message}");
            if (read.Problems.Count > MostNamed)
                around.Error.WriteLine($"{path}: and {read.Problems.Count - MostNamed} more damaged lines.");
            if (read.Fault is not null)
                around.Error.WriteLine($"{path}: {read.Fault}");
            if (read.Operation != wanted)
                throw new UsageException($"{path} holds the book of the operation '{read.Operation}', not of '{wanted}'. Nothing was taken in. Say --operation {read.Operation} if that is meant.");
            if (!read.IsWhole && !parsed.GetValue(leave))
                throw new UsageException($"{path} is damaged, so nothing was taken in. Use a sound copy, or take in what can be read with --leave-out-damaged.");
            using var book = await BookAccess.OpenAsync(CommonOptions.PlaceOf(parsed.GetValue(data), around), wanted, "command line", around, cancellation);
            var accepted = 0;
            foreach (var part in read.Entries.Chunk(Batch))
                accepted += (await book.Store.AppendAsync(wanted, part, cancellation)).Accepted;
            var output = new BookFileOutput(path, wanted, read.Entries.Count, accepted, read.Entries.Count - accepted, read.Problems.Count, null);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                around.Out.WriteLine($"{Say.Count(accepted, "entry", "entries")} taken in, {output.Known} already in the book, {Say.Count(output.LeftOut, "damaged line", "damaged lines")} left out.");
            return read.IsWhole ? ExitCodes.Fine : ExitCodes.SomeRejected;
        });
        return command;
    }

    private static BookFileContent Read(string path)
    {
        if (!File.Exists(path))
            throw new UsageException($"{path}: there is no such file.");
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
            throw new UsageException($"{path}: {error.Message} Nothing was taken in.");
        }
        catch (InvalidDataException error)
        {
            throw new UsageException($"{path}: the packing is damaged ({error.Message}). Nothing was taken in. Use a sound copy.");
        }
    }
}
