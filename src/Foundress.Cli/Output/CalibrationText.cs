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
        text.WriteLine($"{scoop.Name}{(scoop.Observer.Length > 0 ? ", " + scoop.Observer : string.Empty)}: {Say.Count(scoop.Counted.Count, "counted jar", "counted jars")}");
        if (scoop.Counted.Count > 0)
            text.WriteLine($"  counted: {string.Join(", ", scoop.Counted)}");
        text.WriteLine($"  said to hold about {Bees(output.SaidBees)} (log spread {Fine(output.SaidLogSpread)})");
        text.WriteLine($"  usual jar: {Bees(output.UsualBees)} bees, {sure} interval {Bees(output.UsualLower)} to {Bees(output.UsualUpper)}; jars differ by a log spread of {Fine(output.LogSpread)}");
        text.WriteLine($"  next jar, not counted: {sure} of them {Bees(output.NextLower)} to {Bees(output.NextUpper)}");
        text.WriteLine("  " + Used(scoop.Use));
        foreach (var gain in gains)
        {
            text.WriteLine($"  a jar with {gain.Mites} mites, per 100 bees ({sure} interval):");
            text.WriteLine($"    as the measure is said to hold  {Range(gain.AsSaid)}");
            if (gain.AsTaught is { } taught)
                text.WriteLine($"    as the counted jars teach       {Range(taught)}");
            if (gain.AfterMore is { } more)
                text.WriteLine($"    with {CountingGain.More} more counted jars       {Range(more)}");
            text.WriteLine($"    with its own bees counted       {Range(gain.IfCounted)}");
        }

        string Range(LevelInterval interval) => $"{Say.Level(interval.Lower.Per100Bees, culture)} to {Say.Level(interval.Upper.Per100Bees, culture)}";
        string Bees(double bees) => bees.ToString("0", culture);
        string Fine(double value) => value.ToString("0.###", culture);
    }

    private static string Used(CalibrationUse use) => use switch
    {
        CalibrationUse.InUse => "Uncounted jars of this person and measure are taken so.",
        CalibrationUse.TooFew => "Too few yet: uncounted jars are still taken as the measure is said to hold.",
        CalibrationUse.SwitchedOff => "Switched off in the settings: uncounted jars are taken as the measure is said to hold.",
        _ => "The counted jars differ too much to come from one scoop: count the bees of every jar, or sort the jars by scoop.",
    };
}
