namespace Foundress.Cli.Running;

/// <summary>Why a file could not be opened. The system's own messages are English, so the usual ones are said in our words.</summary>
internal static class FileProblem
{
    /// <summary>Whether this is what opening a file that was named can end in.</summary>
    internal static bool Is(Exception error) => error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    internal static string Of(Exception error, string path) => error switch
    {
        FileNotFoundException => SharedTexts.FormatNoSuchFile(Path.GetFullPath(path)),
        DirectoryNotFoundException => SharedTexts.FormatNoSuchFolder(Path.GetFullPath(path)),
        UnauthorizedAccessException => SharedTexts.FormatNotAllowed(Path.GetFullPath(path)),
        _ => error.Message,
    };
}
