using System.Globalization;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Judging;

/// <summary>Reads a jar: level, interval, chance of being over the line, and what that usually means.</summary>
/// <param name="knowledge">The known methods and lines.</param>
/// <param name="policy">How the operation judges.</param>
/// <param name="culture">How numbers are written in the sentences.</param>
public sealed class JarReader(KnowledgeBase knowledge, JudgingPolicy policy, CultureInfo culture)
{
    /// <summary>Counting is not advised for less: a well weighed jar is as good as counted (product choice).</summary>
    private const double LeastGain = 0.03;

    /// <summary>Reads a jar that keeps to the rules of <see cref="Rules.RecordRules"/>.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="apiary">Where it was taken; null when not known.</param>
    /// <exception cref="KnowledgeException">The jar's method is not known.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The jar breaks the rules.</exception>
    public JarReading Read(JarRecord jar, Apiary? apiary) => Read(jar, policy.On(apiary, jar.On));

    /// <summary>Reads a jar against given lines.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="lines">The lines; null to leave it unjudged.</param>
    /// <exception cref="KnowledgeException">The jar's method is not known.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The jar breaks the rules.</exception>
    public JarReading Read(JarRecord jar, LinesInForce? lines)
    {
        var method = knowledge.Methods[jar.Method];
        var bees = jar.Bees.AsBeeCount;
        var (level, interval, posterior) = Estimate(jar, bees);
        var passesReader = new PassesReader(knowledge.Judging, policy.Confidence, culture);
        var passes = passesReader.Read(jar);

        var notJudged = WhyNotJudged(method, lines);
        Chance? overWatch = null, overLine = null;
        Standing? standing = null;
        if (notJudged is null)
        {
            overWatch = lines!.Watch is { } watch ? posterior.ChanceOver(MiteLevel.Per100(watch)) : null;
            overLine = posterior.ChanceOver(MiteLevel.Per100(lines.Deciding));
            standing = Judgement.Judge(overLine.Value, policy.Certainty);
        }

        return new JarReading(
            jar, method, level, interval, posterior, lines, notJudged, overWatch, overLine, standing,
            Meaning(jar, interval, lines, notJudged, overLine, overWatch, standing),
            new Lazy<IReadOnlyList<string>>(() => Sharpen(jar, bees, standing)),
            Working(jar, method, bees, level, interval, posterior, lines, overLine, passes is null ? [] : passesReader.Working(passes)),
            passes,
            [.. method.Recoveries.Select(recovery => CorrectedLevel.Of(recovery, level, interval))],
            [.. method.Cautions.Select(caution => caution.Text)]);
    }

    /// <summary>Reads only where a jar stands: the same answer as <see cref="Read(JarRecord, Apiary)"/> for a fraction of its work.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="apiary">Where it was taken; null when not known.</param>
    /// <exception cref="KnowledgeException">The jar's method is not known.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The jar breaks the rules.</exception>
    public JarStanding Stand(JarRecord jar, Apiary? apiary)
    {
        var lines = policy.On(apiary, jar.On);
        var (level, interval, posterior) = Estimate(jar, jar.Bees.AsBeeCount);
        return WhyNotJudged(knowledge.Methods[jar.Method], lines) is null
            ? new JarStanding(level, interval, Judgement.Judge(posterior.ChanceOver(MiteLevel.Per100(lines!.Deciding)), policy.Certainty))
            : new JarStanding(level, interval, null);
    }

    private (MiteLevel Level, LevelInterval Interval, LevelPosterior Posterior) Estimate(JarRecord jar, BeeCount bees)
    {
        var posterior = LevelPosterior.FromJar(jar.Mites, bees);
        var interval = bees.Basis == BeeBasis.Counted
            ? CountIntervals.ExactPoisson(jar.Mites, (int)bees.Bees, policy.Confidence)
            : posterior.Interval(policy.Confidence);
        return (MiteLevel.Per100(100d * jar.Mites / bees.Bees), interval, posterior);
    }

    private string? WhyNotJudged(CountingMethod method, LinesInForce? lines)
    {
        if (lines is null)
            return "No line is set for this time of year, so the level is given without a judgement.";
        if (lines.Unit != Units.MitesPer100Bees)
            return $"The lines '{lines.Title}' are in {lines.Unit}, another scale than mites per 100 bees. Scales are not converted: choose lines for this kind of count.";
        return lines.ScaleIds.Contains(method.ScaleId)
            ? null
            : $"The lines '{lines.Title}' were set for another way of counting than {method.Name.ToLower(culture)}. Scales are not converted: choose lines for this kind of count.";
    }

    private string Meaning(
        JarRecord jar, LevelInterval interval, LinesInForce? lines, string? notJudged, Chance? over, Chance? overWatch, Standing? standing)
    {
        var none = jar.Mites == 0
            ? $"No mites were found. That is not proof of none: the colony may still carry up to {Say.Level(interval.Upper.Per100Bees, culture)} per 100 bees. "
            : string.Empty;
        if (notJudged is not null)
            return none + notJudged;
        var line = Say.Line(lines!.Deciding, culture);
        var chance = Say.InHundred(over!.Value, culture);
        return none + standing switch
        {
            Standing.Above => $"Over the line of {line} per 100, with a chance of {chance}. A treatment or other control is usually needed now: look at what is workable and lawful where you are.",
            Standing.Below when lines.Watch is { } watch && overWatch > policy.Certainty.SureBelow =>
                $"Below the line of {line} per 100 (chance of being over it: {chance}), but perhaps over {Say.Line(watch, culture)}, from where a control may be needed. Sample again soon.",
            Standing.Below => $"Below the line of {line} per 100 (chance of being over it: {chance}). Usually no control is needed now; sample again when it is next due.",
            _ => $"Not settled: the chance of being over the line of {line} per 100 is {chance}. Sharpen the answer before deciding, or act as if it were over where waiting is the greater risk.",
        };
    }

    private List<string> Sharpen(JarRecord jar, BeeCount bees, Standing? standing)
    {
        var tips = new List<string>();
        var sharpening = Sharpening.Of(new JarCount(jar.Mites, bees), policy.Confidence);
        if (sharpening.WidthIfCounted is { } counted && 1 - (counted / sharpening.WidthNow) >= LeastGain)
            tips.Add($"Count the bees: the interval would be about {Narrower(counted, sharpening.WidthNow)} narrower.");
        tips.Add($"Take another jar from this colony: the interval would be about {Narrower(sharpening.WidthWithAnotherJar, sharpening.WidthNow)} narrower.");
        if (jar.Passes.Count == 1)
            tips.Add("Wash the same bees once more and enter both counts: the second tells how many mites the first left behind.");
        if (standing == Standing.Unclear)
            tips.Add("Sample the other colonies of the apiary: mites move between colonies, and several jars settle what one cannot.");
        return tips;
    }

    private string Narrower(double then, double now) => Say.Percent(Math.Round(Math.Max(0, 1 - (then / now)), 2), culture);

    private List<WorkingStep> Working(
        JarRecord jar, CountingMethod method, BeeCount bees, MiteLevel level, LevelInterval interval, LevelPosterior posterior, LinesInForce? lines, Chance? over,
        IEnumerable<WorkingStep> ofPasses)
    {
        var steps = new List<WorkingStep>();
        if (jar.Passes.Count > 1)
            steps.Add(new WorkingStep("Mites", $"{string.Join(" + ", jar.Passes)} = {jar.Mites} over {jar.Passes.Count} passes", "the count"));
        steps.AddRange(ofPasses);
        steps.Add(new WorkingStep(
            "Level",
            $"100 × {jar.Mites} / {Number(bees.Bees)} = {Number(level.Per100Bees)} mites per 100 bees",
            "Dietemann et al. 2013, J Apic Res 52(1), DOI 10.3896/IBRA.1.52.1.09: mites / bees × 100"));
        steps.Add(Bees(jar.Bees, bees));
        steps.Add(new WorkingStep(
            $"{Say.Percent(interval.Confidence, culture)} interval",
            $"{Number(interval.Lower.Per100Bees)} to {Number(interval.Upper.Per100Bees)} per 100",
            interval.Method == IntervalMethod.ExactPoisson
                ? "exact Poisson interval, Garwood 1936, Biometrika 28:437-442"
                : "equal-tailed interval of the posterior, the number of bees integrated out"));
        if (lines is not null && over is { } chance)
        {
            steps.Add(new WorkingStep(
                $"Chance over {Say.Line(lines.Deciding, culture)}",
                $"{Number(chance.Value)}: tail of the gamma posterior with shape {jar.Mites} + ½ (Jeffreys' prior); posterior mean {Number(posterior.Mean.Per100Bees)} per 100",
                $"the line: {lines.Source}"));
            steps.Add(new WorkingStep(
                "Judgement",
                $"below when the chance is {Number(policy.Certainty.SureBelow.Value)} or less, above from {Number(policy.Certainty.SureAbove.Value)}, unclear between",
                "product choice, no source; editable in the settings"));
        }

        if (method.Recoveries.Count > 0)
        {
            var shares = method.Recoveries.Select(recovery => $"{Number(recovery.Share.Value)} % ({recovery.Share.Source.Text}{(recovery.Share.Source.Status == SourceStatus.FromMemory ? ", from memory" : string.Empty)}), which would make it {Number(level.Per100Bees / (recovery.Share.Value / 100))} per 100");
            steps.Add(new WorkingStep(
                "Not corrected for recovery",
                $"This method is reported to free {string.Join("; ", shares)}. The level above is what was counted; lines are set on the same footing.",
                "see each figure"));
        }

        return steps;
    }

    private WorkingStep Bees(JarBees facts, BeeCount bees)
    {
        if (bees.Basis == BeeBasis.Counted)
            return new WorkingStep("Bees", $"{Number(bees.Bees)}, counted: exact", "the count");
        var usual = $"usually between {bees.Usual.Low.ToString("0", culture)} and {bees.Usual.High.ToString("0", culture)} (log spread {Number(bees.LogSpread)})";
        if (facts is { Grams: { } grams, SampleBees: { } sample, SampleGrams: { } sampleGrams })
        {
            return new WorkingStep(
                "Bees",
                $"{Number(grams)} g × {sample} / {Number(sampleGrams)} g = about {Number(bees.Bees)}, weighed with {sample} counted bees {(facts.SampleApart == true ? "of the same place and day" : "of this jar")}: {usual}",
                "ratio with the delta method: Cochran 1977, Sampling Techniques, chapter 6; spread of single bees: " + knowledge.Weighing.SpreadOfBees.Source.Text);
        }

        return facts.CountedJars is { } jars
            ? new WorkingStep("Bees", $"about {Number(bees.Bees)}, as {Say.Count(jars, "counted jar of the same measure and person teaches", "counted jars of the same measure and person teach")}: {usual}", "normal-inverse-gamma on ln bees: Gelman et al. 2013, Bayesian Data Analysis, section 3.3; see docs/methods/calibration.md")
            : new WorkingStep("Bees", $"about {Number(bees.Bees)}, {bees.Basis.ToString().ToLowerInvariant()}: {usual}", "lognormal number of bees; spread from the jar data");
    }

    private string Number(double value) => value.ToString("0.####", culture);
}
