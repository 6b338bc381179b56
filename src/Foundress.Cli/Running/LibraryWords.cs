using System.CommandLine;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;

namespace Foundress.Cli.Running;

/// <summary>
/// The words that System.CommandLine writes by itself: heads of the help and messages about wrong words. Its own translations
/// leave half of them in English, so they are looked up in its resources, recognised in what it wrote, and said in ours.
/// </summary>
internal static class LibraryWords
{
    private static readonly ResourceManager Library = new("System.CommandLine.Properties.Resources", typeof(RootCommand).Assembly);

    // Where a message holds a name or a value, as an escaped pattern writes it.
    private static readonly Regex Hole = new(@"\\\{(\d)}");

    /// <summary>The help as the library wrote it, with its heads in our words.</summary>
    internal static string Help(string written)
    {
        var heads = new Dictionary<string, string>
        {
            [Word("HelpDescriptionTitle")] = LibraryTexts.Description,
            [Word("HelpUsageTitle")] = LibraryTexts.Usage,
            [Word("HelpArgumentsTitle")] = LibraryTexts.Arguments,
            [Word("HelpOptionsTitle")] = LibraryTexts.Options,
            [Word("HelpCommandsTitle")] = LibraryTexts.Commands,
        };
        var lines = written.Split('\n');
        var head = string.Empty;
        for (var at = 0; at < lines.Length; at++)
        {
            var line = lines[at].TrimEnd('\r');
            var end = lines[at][line.Length..];
            if (heads.TryGetValue(line, out var ours))
                lines[at] = (head = ours) + end;
            else if (head == LibraryTexts.Usage)
                lines[at] = line.Replace(Word("HelpUsageCommand"), LibraryTexts.AnyCommand, StringComparison.Ordinal).Replace(Word("HelpUsageOptions"), LibraryTexts.AnyOptions, StringComparison.Ordinal) + end;
            else if (head != LibraryTexts.Description)
                lines[at] = Row(line) + end;
        }

        return string.Join('\n', lines);
    }

    /// <summary>A message of the parser in our words; as it is when it is none of those known.</summary>
    internal static string Error(string written)
    {
        foreach (var (key, say) in Errors)
        {
            var pattern = string.Concat(@"\A", Hole.Replace(Regex.Escape(Word(key)), "(?<p$1>.*)"), @"\z");
            if (Regex.Match(written, pattern, RegexOptions.Singleline) is { Success: true } match)
                return say(number => match.Groups[$"p{number}"].Value);
        }

        return written;
    }

    // What stands in the first column keeps its width, or the second would move.
    private static string Row(string line)
    {
        var required = Word("HelpOptionsRequiredLabel");
        return line
            .Replace(required, LibraryTexts.Required.PadRight(required.Length), StringComparison.Ordinal)
            .Replace($"[{Word("HelpArgumentDefaultValueLabel")}:", $"[{LibraryTexts.Default}:", StringComparison.Ordinal);
    }

    // The narrower sentence before the one that would take it in.
    private static IEnumerable<(string Key, Func<Func<int, string>, string> Say)> Errors =>
    [
        ("ArgumentConversionCannotParseForOption", value => LibraryTexts.FormatWrongTypeForOption(value(0), value(1), value(2))),
        ("ArgumentConversionCannotParseForCommand", value => LibraryTexts.FormatWrongTypeForCommand(value(0), value(1), value(2))),
        ("ArgumentConversionCannotParse", value => LibraryTexts.FormatWrongType(value(0), value(1))),
        ("CommandRequiredArgumentMissing", value => LibraryTexts.FormatArgumentMissing(value(0), value(1))),
        ("OptionRequiredArgumentMissing", value => LibraryTexts.FormatValueMissing(value(0))),
        ("OptionExpectsOneArgument", value => LibraryTexts.FormatOneValue(value(0), value(1))),
        ("RequiredCommandWasNotProvided", _ => LibraryTexts.CommandMissing),
        ("RequiredOptionWasNotProvided", value => LibraryTexts.FormatOptionMissing(value(0))),
        ("UnrecognizedArgument", value => LibraryTexts.FormatNotAmong(value(0), value(1))),
        ("UnrecognizedCommandOrArgument", value => LibraryTexts.FormatUnrecognized(value(0))),
        ("VersionOptionCannotBeCombinedWithOtherArguments", value => LibraryTexts.FormatVersionAlone(value(0))),
        ("ResponseFileNotFound", value => LibraryTexts.FormatNoResponseFile(value(0))),
        ("ErrorReadingResponseFile", value => LibraryTexts.FormatResponseFileUnread(value(0), value(1))),
    ];

    private static string Word(string key) => Library.GetString(key, CultureInfo.CurrentUICulture) ?? throw new InvalidOperationException($"System.CommandLine has no text '{key}' any more.");
}
