using System.CommandLine;
using Foundress.Book.Importing;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary>What every import from a CSV file is told.</summary>
internal sealed class ImportOptions
{
    private readonly Option<string> _author;

    /// <param name="what">What is written down, in the plural.</param>
    internal ImportOptions(string what) =>
        _author = new Option<string>("--author") { Description = $"Who writes the {what} down.", HelpName = "NAME", DefaultValueFactory = _ => "import" };

    internal Argument<string> File { get; } = new("FILE.csv") { Description = "The file." };

    internal Option<string?> Rejects { get; } = new("--rejects") { Description = "Where rows that are not taken are written, with the reason. Without it: beside the file, with .rejected in its name.", HelpName = "FILE" };

    internal Option<bool> Check { get; } = new("--check") { Description = "Only look: say what would be imported and write nothing into the book." };

    internal Option<string> Author => _author;

    /// <summary>The author given.</summary>
    /// <exception cref="UsageException">It is no name.</exception>
    internal string AuthorOf(ParseResult parsed) => NameField.Read(parsed.GetValue(_author)!, out var writer) is { } problem
        ? throw new UsageException($"--author '{parsed.GetValue(_author)}': {problem}")
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
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new UsageException($"The file '{path}' cannot be read: {error.Message}", error);
        }
    }

    /// <summary>Says which columns were not read.</summary>
    internal static void SayUnknown(string path, IEnumerable<string> columns, TextWriter error)
    {
        foreach (var column in columns)
            error.WriteLine($"{path}: the column '{column}' is not known and was not read.");
    }

    /// <summary>Says where the rejected rows are.</summary>
    internal static void SayRejects(string? file, TextWriter text)
    {
        if (file is not null)
            text.WriteLine($"Rejected rows are in {file}: put them right and import that file.");
    }
}
