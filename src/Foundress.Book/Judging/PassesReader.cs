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
                PassesTexts.MitesThereWere, PassesTexts.FormatNoEstimate(reading.Finding), PassesTexts.NoEstimateSource);
            yield break;
        }

        var counts = estimate.Counts.Mites;
        yield return counts.Count == 2
            ? new WorkingStep(
                PassesTexts.MitesThereWere,
                PassesTexts.FormatTwoPassesWorked(counts[0], counts[1], Fine(estimate.Mites), Fine(estimate.StandardError)),
                PassesTexts.TwoPassesSource)
            : new WorkingStep(
                PassesTexts.MitesThereWere,
                PassesTexts.FormatManyPassesWorked(Fine(estimate.Mites), string.Join(", ", counts), Fine(estimate.StandardError)),
                PassesTexts.ManyPassesSource);
        yield return new WorkingStep(
            PassesTexts.FormatIntervalOfMites(Say.Percent(interval.Confidence, culture)),
            interval.Upper is { } upper
                ? PassesTexts.FormatLowerToUpper(Fine(interval.Lower), Fine(upper))
                : PassesTexts.FormatNoUpperLimit(Fine(interval.Lower)),
            PassesTexts.IntervalSource);
        yield return new WorkingStep(
            PassesTexts.ShareFound,
            PassesTexts.FormatShareFoundWorked(Fine(estimate.RecoveryOfPass), Fine(estimate.RecoveryOfAll), Fine(reading.PerHundred!.Value)),
            PassesTexts.ShareFoundSource);
        if (reading.Next is { } next)
        {
            yield return new WorkingStep(
                PassesTexts.AnotherPass,
                PassesTexts.FormatAnotherPassWorked(
                    Fine(next.ExpectedMites), Fine(next.ExpectedLeft), Wide(next.Now), Wide(next.After), Say.Percent(defaults.PassNarrowing.Value, culture), Fine(defaults.PassMites.Value)),
                defaults.PassNarrowing.Source.Text);
        }
    }

    private PassesReading Read(PassCounts counts, double bees)
    {
        var removal = Removal.From(counts);
        if (removal.Estimate is not { } estimate)
            return new PassesReading(removal, null, null, null, null, Refused(removal), removal.Refusal == RemovalRefusal.NoDecline ? PassesTexts.ShakeLonger : null);
        var interval = estimate.Interval(confidence);
        var next = NextPass.Of(estimate, confidence);
        bool? worth = next?.IsWorthIt(defaults.PassNarrowing.Value, defaults.PassMites.Value);
        return new PassesReading(removal, interval, 100 * estimate.Mites / bees, next, worth, Found(estimate, interval), Advice(next, worth));
    }

    private string Found(RemovalEstimate estimate, RemovalInterval interval)
    {
        var (passes, mites, estimated) = (Times(estimate.Counts.Passes), Say.Mites(estimate.Counts.Summed), Rough(estimate.Mites));
        var (ofPass, ofAll) = (Share(estimate.RecoveryOfPass), Share(estimate.RecoveryOfAll));
        return interval.Upper is { } upper
            ? PassesTexts.FormatFoundWithRange(passes, mites, estimated, Rough(interval.Lower), Rough(upper), Say.Percent(interval.Confidence, culture), ofPass, ofAll)
            : PassesTexts.FormatFoundAtLeast(passes, mites, estimated, Rough(interval.Lower), ofPass, ofAll);
    }

    private static string Refused(Removal removal)
    {
        if (removal.Refusal == RemovalRefusal.NoMites)
            return PassesTexts.NoMites;
        var counts = removal.Counts.Mites.Skip(1).Aggregate(removal.Counts.Mites[0].ToString(CultureInfo.CurrentCulture), (before, next) => PassesTexts.FormatCountThenCount(before, next));
        return PassesTexts.FormatNoDecline(counts);
    }

    private string? Advice(NextPass? next, bool? worth)
    {
        if (next is not { } pass)
            return null;
        if (worth != true)
            return PassesTexts.FormatNotWorthIt(Expected(pass.ExpectedMites));
        return pass.Now.Width is null
            ? PassesTexts.FormatWashToKnowMost(Expected(pass.ExpectedMites))
            : PassesTexts.FormatWashToNarrow(Expected(pass.ExpectedMites), Width(pass.After), Width(pass.Now));
    }

    private string Expected(double mites) => mites < 0.5 ? PassesTexts.HardlyAnother : Math.Round(mites) == 1 ? PassesTexts.OneMore : PassesTexts.FormatSomeMore(Rough(mites));

    private string Width(RemovalInterval interval) => interval.Width is { } width ? Rough(width) : PassesTexts.EndlesslyMany;

    private string Wide(RemovalInterval interval) => interval.Width is { } width ? Fine(width) : PassesTexts.EndlesslyMany;

    private string Rough(double mites) => Math.Round(mites).ToString("0", culture);

    private string Fine(double value) => value.ToString("0.###", culture);

    // Never "all of them": that the estimate says so does not make it certain.
    private string Share(double share) => share > 0.995 ? PassesTexts.NearlyAll : PassesTexts.FormatShareIn100(Math.Round(100 * share).ToString("0", culture));

    private static string Times(int passes) => passes switch
    {
        2 => PassesTexts.TwoPasses,
        3 => PassesTexts.ThreePasses,
        4 => PassesTexts.FourPasses,
        _ => PassesTexts.FormatSomePasses(passes),
    };
}
