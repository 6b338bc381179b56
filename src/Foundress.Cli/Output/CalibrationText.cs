using System.Globalization;
using Foundress.Book.Calibrating;
using Foundress.Book.Wording;
using Foundress.Science.Estimation;

namespace Foundress.Cli.Output;

/// <summary>What counted jars teach, as plain sentences.</summary>
internal static class CalibrationText
{
    internal static void Write(TextWriter text, TaughtScoop scoop, CalibrationOutput output, IReadOnlyList<CountingGain> gains, CultureInfo culture)
    {
        var sure = Say.Percent(output.Confidence, culture);
        var name = scoop.Observer.Length > 0 ? $"{scoop.Name}, {scoop.Observer}" : scoop.Name;
        text.WriteLine(Plural.Pick(scoop.Counted.Count, OutputTexts.FormatCountedJars(name, scoop.Counted.Count)));
        if (scoop.Counted.Count > 0)
            text.WriteLine("  " + OutputTexts.FormatCountedList(string.Join(", ", scoop.Counted)));
        text.WriteLine("  " + OutputTexts.FormatSaidToHold(Bees(output.SaidBees), Fine(output.SaidLogSpread)));
        text.WriteLine("  " + OutputTexts.FormatUsualJar(Bees(output.UsualBees), sure, Bees(output.UsualLower), Bees(output.UsualUpper), Fine(output.LogSpread)));
        text.WriteLine("  " + OutputTexts.FormatNextJar(sure, Bees(output.NextLower), Bees(output.NextUpper)));
        text.WriteLine("  " + Used(scoop.Use));
        foreach (var gain in gains)
        {
            text.WriteLine("  " + OutputTexts.FormatExampleJar(gain.Mites, sure));
            (string Head, LevelInterval? Interval)[] rows =
            [
                (OutputTexts.AsSaid, gain.AsSaid), (OutputTexts.AsTaught, gain.AsTaught), (OutputTexts.FormatAfterMore(CountingGain.More), gain.AfterMore), (OutputTexts.IfCounted, gain.IfCounted),
            ];
            var width = rows.Max(row => row.Head.Length);
            foreach (var (head, interval) in rows)
            {
                if (interval is { } known)
                    text.WriteLine($"    {head.PadRight(width)}  {Range(known)}");
            }
        }

        string Range(LevelInterval interval) => OutputTexts.FormatRange(Say.Level(interval.Lower.Per100Bees, culture), Say.Level(interval.Upper.Per100Bees, culture));
        string Bees(double bees) => bees.ToString("0", culture);
        string Fine(double value) => value.ToString("0.###", culture);
    }

    private static string Used(CalibrationUse use) => use switch
    {
        CalibrationUse.InUse => OutputTexts.ScoopInUse,
        CalibrationUse.TooFew => OutputTexts.ScoopTooFew,
        CalibrationUse.SwitchedOff => OutputTexts.ScoopSwitchedOff,
        _ => OutputTexts.ScoopTooWide,
    };
}
