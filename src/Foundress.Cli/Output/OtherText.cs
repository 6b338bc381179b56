using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Book.Wording;

namespace Foundress.Cli.Output;

/// <summary>A count on a scale of its own as plain sentences.</summary>
internal static class OtherText
{
    internal static void Write(TextWriter text, OtherReading reading, bool working, CultureInfo culture)
    {
        var unit = reading.Kind == OtherKind.NaturalFall ? "mites a day" : "% of cells";
        text.WriteLine($"{reading.Method}, {reading.Counted}:");
        text.WriteLine(
            $"{Say.Level(reading.Rate.Value, culture)} {unit}; {Say.Percent(reading.Rate.Confidence, culture)} interval "
            + $"{Say.Level(reading.Rate.Lower, culture)} to {Say.Level(reading.Rate.Upper, culture)}. A scale of its own, not mites per 100 bees.");
        text.WriteLine(reading.Meaning);
        if (reading.TotalSaid is { } total)
            text.WriteLine(total);
        if (reading.Lines is null)
            TextList.Write(text, "Published lines for this time of year:", [.. reading.Published.Select(lines => $"{lines.PolicyId}: {Lines(lines, culture)} ({lines.Title}; {lines.Source})")]);
        TextList.Write(text, "Mind with this method:", reading.Cautions);
        if (working)
            TextList.Write(text, "How it was worked out:", [.. reading.Working.Select(step => $"{step.What}: {step.How} [{step.Source}]")]);
    }

    private static string Lines(LinesInForce lines, CultureInfo culture) => lines is { Watch: { } watch, Act: { } act }
        ? $"{Say.Line(watch, culture)} and {Say.Line(act, culture)}"
        : Say.Line(lines.Deciding, culture);
}
