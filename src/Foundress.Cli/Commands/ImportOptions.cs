using System.CommandLine;
using Foundress.Book.Importing;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary>What every import from a CSV file is told.</summary>
internal sealed class ImportOptions
{
    private readonly Option<string> _author;

    /// <param name="author">What the option for who writes it down is for.</param>
    internal ImportOptions(string author) =>
        _author = new Option<string>("--author") { Description = author, HelpName = "NAME", DefaultValueFactory = _ => "import" };

    internal Argument<string> File { get; } = new(SharedTexts.WordCsvFile) { Description = FileCommandTexts.File };

    internal Option<string?> Rejects { get; } = new("--rejects") { Description = FileCommandTexts.Rejects, HelpName = SharedTexts.WordFile };

    internal Option<bool> Check { get; } = new("--check") { Description = FileCommandTexts.Check };

    internal Option<string> Author => _author;

    /// <summary>The author given.</summary>
    /// <exception cref="UsageException">It is no name.</exception>
    internal string AuthorOf(ParseResult parsed) => NameField.Read(parsed.GetValue(_author)!, out var writer) is { } problem
        ? throw UsageException.OfValue("--author", parsed.GetValue(_author)!, problem)
        : writer;

    /// <summary>Opens the file.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    internal FileStream Open(ParseResult parsed)
    {
        var path = parsed.GetValue(File)!;
        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1 << 16);
        }
        catch (Exception error) when (FileProblem.Is(error))
        {
            throw new UsageException(SharedTexts.FormatFileUnread(path, FileProblem.Of(error, path)), error);
        }
    }

    /// <summary>Says which columns were not read.</summary>
    internal static void SayUnknown(string path, IEnumerable<string> columns, TextWriter error)
    {
        foreach (var column in columns)
            error.WriteLine(SharedTexts.FormatColumnUnknown(path, column));
    }

    /// <summary>Says where the rejected rows are.</summary>
    internal static void SayRejects(string? file, TextWriter text)
    {
        if (file is not null)
            text.WriteLine(FileCommandTexts.FormatRejectsAreIn(file));
    }
}
