using System.Globalization;
using Foundress.Book.Records;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Estimation;

namespace Foundress.Book.Judging;

/// <summary>Reads repeat passes over the same bees: the mites there were, and whether another pass is worth it.</summary>
/// <param name="defaults">From when on another pass is worth it.</param>
/// <param name="confidence">Confidence of the interval, above 0 and below 1.</param>
/// <param name="culture">How numbers are written.</param>
public sealed class PassesReader(JudgingDefaults defaults, double confidence, CultureInfo culture)
{
    /// <summary>Reads the passes of a jar.</summary>
    /// <param name="jar">A jar that keeps to the rules of <see cref="Rules.RecordRules"/>.</param>
    /// <returns>None for a single pass.</returns>
    public PassesReading? Read(JarRecord jar) => jar.Passes.Count < 2 ? null : Read(new PassCounts(jar.Passes), jar.Bees.Count);

    /// <summary>The steps of the working.</summary>
    /// <param name="reading">What was read.</param>
    public IEnumerable<WorkingStep> Working(PassesReading reading)
    {
        if (reading is not { Removal.Estimate: { } estimate, Interval: { } interval })
        {
            yield return new WorkingStep(
                "Mites there were", "no estimate: " + reading.Finding, "decline needed: Seber & Whale 1970, Biometrics 26:393-400");
            yield break;
        }

        var counts = estimate.Counts.Mites;
        yield return counts.Count == 2
            ? new WorkingStep(
                "Mites there were",
                $"c1² / (c1 − c2) = {counts[0]}² / ({counts[0]} − {counts[1]}) = {Fine(estimate.Mites)}, standard error {Fine(estimate.StandardError)}",
                "two passes: Seber & Le Cren 1967, J Anim Ecol 36:631-643")
            : new WorkingStep(
                "Mites there were",
                $"{Fine(estimate.Mites)}: the number of greatest likelihood for {string.Join(", ", counts)}, standard error {Fine(estimate.StandardError)}",
                "Moran 1951, Biometrika 38:307-311; standard error: Zippin 1958, J Wildl Manage 22:82-90");
        yield return new WorkingStep(
            $"{Say.Percent(interval.Confidence, culture)} interval of the mites there were",
            interval.Upper is { } upper
                ? $"{Fine(interval.Lower)} to {Fine(upper)}"
                : $"{Fine(interval.Lower)} or more: even endless mites lie within, so there is no upper limit",
            "profile likelihood; see docs/methods/removal.md");
        yield return new WorkingStep(
            "Share found",
            $"each pass takes off {Fine(estimate.RecoveryOfPass)} of the mites still there; all passes found {Fine(estimate.RecoveryOfAll)}. If every mite had been found: {Fine(reading.PerHundred!.Value)} per 100. Shown, not used",
            "the same chance for every mite and pass is assumed; mites that cling harder make the estimate too low");
        if (reading.Next is { } next)
        {
            yield return new WorkingStep(
                "Another pass",
                $"expected to find {Fine(next.ExpectedMites)} mites and to leave {Fine(next.ExpectedLeft)}; the interval is {Wide(next.Now)} mites wide and would be {Wide(next.After)}. Worth it when it takes off {Say.Percent(defaults.PassNarrowing.Value, culture)} and {Fine(defaults.PassMites.Value)} mites",
                defaults.PassNarrowing.Source.Text);
        }
    }

    private PassesReading Read(PassCounts counts, double bees)
    {
        var removal = Removal.From(counts);
        if (removal.Estimate is not { } estimate)
            return new PassesReading(removal, null, null, null, null, Refused(removal), removal.Refusal == RemovalRefusal.NoDecline ? "Shake longer and wash once more: counts that fall in the end can still give an estimate." : null);
        var interval = estimate.Interval(confidence);
        var next = NextPass.Of(estimate, confidence);
        bool? worth = next?.IsWorthIt(defaults.PassNarrowing.Value, defaults.PassMites.Value);
        return new PassesReading(removal, interval, 100 * estimate.Mites / bees, next, worth, Found(estimate, interval), Advice(next, worth));
    }

    private string Found(RemovalEstimate estimate, RemovalInterval interval)
    {
        var range = interval.Upper is { } upper
            ? $"{Rough(interval.Lower)} to {Rough(upper)}, {Say.Percent(interval.Confidence, culture)} interval"
            : $"at least {Rough(interval.Lower)}; the counts do not tell how many at most";
        return $"{Times(estimate.Counts.Passes)} found {Say.Count(estimate.Counts.Summed, "mite", "mites")}. About {Rough(estimate.Mites)} were there ({range}): "
            + $"one pass takes off about {Share(estimate.RecoveryOfPass)} of those still on the bees, and {Share(estimate.RecoveryOfAll)} were found in all. "
            + "The level stays as counted, because lines are set for counts as they are.";
    }

    private static string Refused(Removal removal)
    {
        var counts = string.Join(", then ", removal.Counts.Mites);
        return removal.Refusal == RemovalRefusal.NoMites
            ? "No pass found a mite, so the passes do not tell what share they take off."
            : $"Later passes found as many mites as earlier ones, or more ({counts}): such counts fit any number of mites left on the bees, so no number is given. "
                + "A pass was cut short, or the method frees too few mites.";
    }

    private string? Advice(NextPass? next, bool? worth)
    {
        if (next is not { } pass)
            return null;
        if (worth != true)
            return $"Washing the same bees once more is not worth it: {Few(pass.ExpectedMites)} expected.";
        return pass.Now.Width is null
            ? $"Wash the same bees once more: {Few(pass.ExpectedMites)} expected, and only then can it be said how many there were at most."
            : $"Wash the same bees once more: {Few(pass.ExpectedMites)} expected, and the number there were would be known within {Width(pass.After)} mites instead of {Width(pass.Now)}.";
    }

    private string Few(double mites) => mites < 0.5 ? "hardly another mite is" : Math.Round(mites) == 1 ? "about 1 more mite is" : $"about {Rough(mites)} more mites are";

    private string Width(RemovalInterval interval) => interval.Width is { } width ? Rough(width) : "endlessly many";

    private string Wide(RemovalInterval interval) => interval.Width is { } width ? Fine(width) : "endlessly many";

    private string Rough(double mites) => Math.Round(mites).ToString("0", culture);

    private string Fine(double value) => value.ToString("0.###", culture);

    // Never "all of them": that the estimate says so does not make it certain.
    private string Share(double share) => share > 0.995 ? "nearly all" : Math.Round(100 * share).ToString("0", culture) + " in 100";

    private static string Times(int passes) => passes switch
    {
        2 => "Two passes",
        3 => "Three passes",
        4 => "Four passes",
        _ => $"{passes} passes",
    };
}
