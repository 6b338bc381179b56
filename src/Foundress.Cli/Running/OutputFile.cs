using System.CommandLine;
using System.Text;

namespace Foundress.Cli.Running;

/// <summary>Where a command's text goes: a file that was named, or the standard output.</summary>
internal static class OutputFile
{
    internal static Option<string?> Option() => new("--out") { Description = SharedTexts.Out, HelpName = SharedTexts.WordFile };

    internal static async Task WriteAsync(string text, string? path, Surroundings around, CancellationToken cancellation)
    {
        if (path is not null)
            await File.WriteAllTextAsync(path, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), cancellation);
        else
            await around.Out.WriteAsync(text.EndsWith('\n') ? text : text + "\n");
    }
}
