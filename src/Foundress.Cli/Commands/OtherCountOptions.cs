using System.CommandLine;
using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary>What the commands for counts on other scales share.</summary>
internal static class OtherCountOptions
{
    internal static Option<string?> Lines(string scale, KnowledgeBase knowledge)
    {
        var known = Fitting(scale, knowledge);
        return new("--lines") { Description = known.Length == 0 ? CountCommandTexts.NoLines : CountCommandTexts.FormatLines(string.Join(", ", known)), HelpName = "ID" };
    }

    internal static string? LinesOf(string? id, string scale, KnowledgeBase knowledge)
    {
        var known = Fitting(scale, knowledge);
        return id is null || known.Contains(id) ? id : throw UsageException.OfValue("--lines", id, CountCommandTexts.FormatSetUnknown(string.Join(", ", known)));
    }

    internal static int Count(string option, string text) =>
        MitesField.Read(text, out var count) is { } problem ? throw UsageException.OfValue(option, text, problem) : count;

    internal static double Number(string option, string text, string fix) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw UsageException.OfValue(option, text, fix);

    /// <summary>Writes the answer.</summary>
    internal static int Answer(OtherReading reading, bool json, bool working, Surroundings around)
    {
        if (json)
            JsonOut.Write(around.Out, OtherOutput.Of(reading));
        else
            OtherText.Write(around.Out, reading, working, around.Culture);
        return ExitCodes.Fine;
    }

    internal static OtherCountReader Reader(PolicyRecord settings, KnowledgeBase knowledge, Surroundings around) =>
        new(knowledge, JudgingPolicy.Of(settings, knowledge), around.Culture);

    private static string[] Fitting(string scale, KnowledgeBase knowledge) =>
        [.. knowledge.LinePolicies.Where(policy => policy.AppliesTo(scale)).Select(policy => policy.Id)];
}
