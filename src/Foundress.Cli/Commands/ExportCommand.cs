using System.CommandLine;
using System.IO.Compression;
using Foundress.Book.Exchanging;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress export</c>: every entry of a book in one file.</summary>
internal static class ExportCommand
{
    internal const string Packed = ".gz";

    internal static Command Make(Surroundings around)
    {
        var file = new Argument<string>(SharedTexts.WordFile) { Description = FileCommandTexts.FormatExportFile(Packed) };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("export", FileCommandTexts.Export) { file, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var path = parsed.GetValue(file)!;
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var digest = await WriteAsync(path, book, cancellation);
            var output = new BookFileOutput(path, book.Scribe.Operation, book.Ledger.Count, null, null, 0, digest);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                around.Out.WriteLine(FileCommandTexts.FormatExported(Say.Entries(output.Entries), path, digest));
            return ExitCodes.Fine;
        });
        return command;
    }

    // Under another name until it is whole and on the disk: a file that breaks off must not look like the book.
    private static async Task<string> WriteAsync(string path, BookAccess book, CancellationToken cancellation)
    {
        if (File.Exists(path))
            throw new UsageException(FileCommandTexts.FormatFileExists(path));
        var unfinished = path + ".part";
        try
        {
            string digest;
            await using (var file = new FileStream(unfinished, FileMode.Create, FileAccess.Write))
            {
                await using (var packed = path.EndsWith(Packed, StringComparison.OrdinalIgnoreCase) ? new GZipStream(file, CompressionLevel.Optimal, leaveOpen: true) : null)
                    digest = await BookFile.WriteAsync((Stream?)packed ?? file, book.Scribe.Operation, book.Ledger.Entries, cancellation);
                file.Flush(flushToDisk: true);
            }

            File.Move(unfinished, path);
            return digest;
        }
        finally
        {
            File.Delete(unfinished);
        }
    }
}
