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
            BeeBasis.Counted => string.Create(culture, $"{jar.Bees.Count} bees"),
            var basis => string.Create(culture, $"about {jar.Bees.Count:0.#} bees ({basis.ToString().ToLowerInvariant()})"),
        };
        var counts = jar.Passes.Count > 1 ? $" ({string.Join(" + ", jar.Passes)})" : string.Empty;
        text.WriteLine($"{reading.Method.Name}, {Say.Count(jar.Mites, "mite", "mites")}{counts} on {bees}:");
        text.WriteLine(
            $"{Say.Level(reading.Level.Per100Bees, culture)} mites per 100 bees; {Say.Percent(policy.Confidence, culture)} interval "
            + $"{Say.Level(reading.Interval.Lower.Per100Bees, culture)} to {Say.Level(reading.Interval.Upper.Per100Bees, culture)}.");
        text.WriteLine(reading.Meaning);
        if (reading.Passes is { } passes)
            TextList.Write(text, "What the passes say:", passes.Advice is { } advice ? [passes.Finding, advice] : [passes.Finding]);
        TextList.Write(text, "What would sharpen the answer:", reading.Sharpen);
        TextList.Write(text, "Mind with this method:", reading.Cautions);
        if (reading.Lines is { } lines)
            text.WriteLine($"\nLines: {lines.Title} ({lines.Source}).");
        if (working)
            TextList.Write(text, "How it was worked out:", [.. reading.Working.Select(step => $"{step.What}: {step.How} [{step.Source}]")]);
    }
}
