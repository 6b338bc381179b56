using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Book.Wording;

namespace Foundress.Cli.Output;

/// <summary>A count on a scale of its own as plain sentences.</summary>
internal static class OtherText
{
    internal static void Write(TextWriter text, OtherReading reading, bool working, CultureInfo culture)
    {
        var (rate, sure, lower, upper) = (
            Say.Level(reading.Rate.Value, culture), Say.Percent(reading.Rate.Confidence, culture), Say.Level(reading.Rate.Lower, culture), Say.Level(reading.Rate.Upper, culture));
        text.WriteLine($"{reading.Method}, {reading.Counted}:");
        text.WriteLine(reading.Kind == OtherKind.NaturalFall ? OutputTexts.FormatFallRate(rate, sure, lower, upper) : OutputTexts.FormatBroodRate(rate, sure, lower, upper));
        text.WriteLine(reading.Meaning);
        if (reading.TotalSaid is { } total)
            text.WriteLine(total);
        if (reading.Lines is null)
            TextList.Write(text, OutputTexts.PublishedHead, [.. reading.Published.Select(lines => $"{lines.PolicyId}: {Lines(lines, culture)} ({lines.Title}; {lines.Source})")]);
        TextList.Write(text, OutputTexts.CautionsHead, reading.Cautions);
        if (working)
            TextList.Write(text, OutputTexts.WorkingHead, [.. reading.Working.Select(step => $"{step.What}: {step.How} [{step.Source}]")]);
    }

    private static string Lines(LinesInForce lines, CultureInfo culture) => lines is { Watch: { } watch, Act: { } act }
        ? OutputTexts.FormatTwoLines(Say.Line(watch, culture), Say.Line(act, culture))
        : Say.Line(lines.Deciding, culture);
}
