using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Book.Wording;
using Foundress.Science;

namespace Foundress.Cli.Output;

/// <summary>A jar's reading as plain sentences.</summary>
internal static class JarText
{
    internal static void Write(TextWriter text, JarReading reading, JudgingPolicy policy, bool working, CultureInfo culture)
    {
        var jar = reading.Facts;
        var bees = jar.Bees.Basis switch
        {
            BeeBasis.Counted => OutputTexts.FormatCountedBees(jar.Bees.Count.ToString(culture)),
            BeeBasis.Weighed => OutputTexts.FormatWeighedBees(jar.Bees.Count.ToString("0.#", culture)),
            _ => OutputTexts.FormatAssumedBees(jar.Bees.Count.ToString("0.#", culture)),
        };
        var counts = jar.Passes.Count > 1 ? $" ({string.Join(" + ", jar.Passes)})" : string.Empty;
        text.WriteLine(OutputTexts.FormatJarHead(reading.Method.Name, Say.Mites(jar.Mites) + counts, bees));
        text.WriteLine(OutputTexts.FormatJarLevel(
            Say.Level(reading.Level.Per100Bees, culture), Say.Percent(policy.Confidence, culture),
            Say.Level(reading.Interval.Lower.Per100Bees, culture), Say.Level(reading.Interval.Upper.Per100Bees, culture)));
        text.WriteLine(reading.Meaning);
        if (reading.Passes is { } passes)
            TextList.Write(text, OutputTexts.PassesHead, passes.Advice is { } advice ? [passes.Finding, advice] : [passes.Finding]);
        TextList.Write(text, OutputTexts.SharpenHead, reading.Sharpen);
        TextList.Write(text, OutputTexts.CautionsHead, reading.Cautions);
        if (reading.Lines is { } lines)
            text.WriteLine("\n" + OutputTexts.FormatLinesUsed(lines.Title, lines.Source));
        if (working)
            TextList.Write(text, OutputTexts.WorkingHead, [.. reading.Working.Select(step => $"{step.What}: {step.How} [{step.Source}]")]);
    }
}
