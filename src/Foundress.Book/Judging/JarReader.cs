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
            return JudgingTexts.NoLineSet;
        if (lines.Unit != Units.MitesPer100Bees)
            return JudgingTexts.FormatOtherScale(lines.Title, Units.Name(lines.Unit));
        return lines.ScaleIds.Contains(method.ScaleId)
            ? null
            : JudgingTexts.FormatOtherWayOfCounting(lines.Title, Midway.Name(method.Name, culture));
    }

    private string Meaning(
        JarRecord jar, LevelInterval interval, LinesInForce? lines, string? notJudged, Chance? over, Chance? overWatch, Standing? standing)
    {
        var none = jar.Mites == 0
            ? JudgingTexts.FormatNoMitesFound(Say.Level(interval.Upper.Per100Bees, culture)) + " "
            : string.Empty;
        if (notJudged is not null)
            return none + notJudged;
        var line = Say.Line(lines!.Deciding, culture);
        var chance = Say.InHundred(over!.Value, culture);
        return none + standing switch
        {
            Standing.Above => JudgingTexts.FormatAboveMeaning(line, chance),
            Standing.Below when lines.Watch is { } watch && overWatch > policy.Certainty.SureBelow =>
                JudgingTexts.FormatBelowPerhapsWatchMeaning(line, chance, Say.Line(watch, culture)),
            Standing.Below => JudgingTexts.FormatBelowMeaning(line, chance),
            _ => JudgingTexts.FormatUnclearMeaning(line, chance),
        };
    }

    private List<string> Sharpen(JarRecord jar, BeeCount bees, Standing? standing)
    {
        var tips = new List<string>();
        var sharpening = Sharpening.Of(new JarCount(jar.Mites, bees), policy.Confidence);
        if (sharpening.WidthIfCounted is { } counted && 1 - (counted / sharpening.WidthNow) >= LeastGain)
            tips.Add(JudgingTexts.FormatTipCountBees(Narrower(counted, sharpening.WidthNow)));
        tips.Add(JudgingTexts.FormatTipAnotherJar(Narrower(sharpening.WidthWithAnotherJar, sharpening.WidthNow)));
        if (jar.Passes.Count == 1)
            tips.Add(JudgingTexts.TipWashAgain);
        if (standing == Standing.Unclear)
            tips.Add(JudgingTexts.TipSampleOthers);
        return tips;
    }

    private string Narrower(double then, double now) => Say.Percent(Math.Round(Math.Max(0, 1 - (then / now)), 2), culture);

    private List<WorkingStep> Working(
        JarRecord jar, CountingMethod method, BeeCount bees, MiteLevel level, LevelInterval interval, LevelPosterior posterior, LinesInForce? lines, Chance? over,
        IEnumerable<WorkingStep> ofPasses)
    {
        var steps = new List<WorkingStep>();
        if (jar.Passes.Count > 1)
            steps.Add(new WorkingStep(JudgingTexts.Mites, JudgingTexts.FormatMitesSummed(string.Join(" + ", jar.Passes), jar.Mites, jar.Passes.Count), JudgingTexts.TheCount));
        steps.AddRange(ofPasses);
        steps.Add(new WorkingStep(
            JudgingTexts.Level,
            JudgingTexts.FormatLevelWorked(jar.Mites, Number(bees.Bees), Number(level.Per100Bees)),
            JudgingTexts.LevelSource));
        steps.Add(Bees(jar.Bees, bees));
        steps.Add(new WorkingStep(
            JudgingTexts.FormatInterval(Say.Percent(interval.Confidence, culture)),
            JudgingTexts.FormatIntervalPer100(Number(interval.Lower.Per100Bees), Number(interval.Upper.Per100Bees)),
            interval.Method == IntervalMethod.ExactPoisson ? JudgingTexts.ExactPoisson : JudgingTexts.EqualTailed));
        if (lines is not null && over is { } chance)
        {
            steps.Add(new WorkingStep(
                JudgingTexts.FormatChanceOver(Say.Line(lines.Deciding, culture)),
                JudgingTexts.FormatChanceOverWorked(Number(chance.Value), jar.Mites, Number(posterior.Mean.Per100Bees)),
                JudgingTexts.FormatLineSource(lines.Source)));
            steps.Add(new WorkingStep(
                JudgingTexts.Judgement,
                JudgingTexts.FormatJudgementRule(Number(policy.Certainty.SureBelow.Value), Number(policy.Certainty.SureAbove.Value)),
                JudgingTexts.NoSource));
        }

        if (method.Recoveries.Count > 0)
        {
            var shares = method.Recoveries.Select(recovery => Recovery(recovery.Share, level.Per100Bees / (recovery.Share.Value / 100)));
            steps.Add(new WorkingStep(
                JudgingTexts.NotCorrected, JudgingTexts.FormatNotCorrectedWorked(string.Join("; ", shares)), JudgingTexts.SeeEachFigure));
        }

        return steps;
    }

    private string Recovery(Figure share, double level) => share.Source.Status == SourceStatus.FromMemory
        ? JudgingTexts.FormatRecoveryShareFromMemory(Number(share.Value), share.Source.Text, Number(level))
        : JudgingTexts.FormatRecoveryShare(Number(share.Value), share.Source.Text, Number(level));

    private WorkingStep Bees(JarBees facts, BeeCount bees)
    {
        if (bees.Basis == BeeBasis.Counted)
            return new WorkingStep(JudgingTexts.Bees, JudgingTexts.FormatBeesCounted(Number(bees.Bees)), JudgingTexts.TheCount);
        var usual = JudgingTexts.FormatBeesUsual(bees.Usual.Low.ToString("0", culture), bees.Usual.High.ToString("0", culture), Number(bees.LogSpread));
        if (facts is { Grams: { } grams, SampleBees: { } sample, SampleGrams: { } sampleGrams })
        {
            return new WorkingStep(
                JudgingTexts.Bees,
                facts.SampleApart == true
                    ? JudgingTexts.FormatBeesWeighedApart(Number(grams), sample, Number(sampleGrams), Number(bees.Bees), usual)
                    : JudgingTexts.FormatBeesWeighedOfJar(Number(grams), sample, Number(sampleGrams), Number(bees.Bees), usual),
                JudgingTexts.FormatBeesWeighedSource(knowledge.Weighing.SpreadOfBees.Source.Text));
        }

        if (facts.CountedJars is { } jars)
            return new WorkingStep(JudgingTexts.Bees, Plural.Pick(jars, JudgingTexts.FormatBeesTaught(Number(bees.Bees), jars, usual)), JudgingTexts.BeesTaughtSource);
        var about = bees.Basis == BeeBasis.Weighed ? JudgingTexts.FormatBeesWeighed(Number(bees.Bees), usual) : JudgingTexts.FormatBeesAssumed(Number(bees.Bees), usual);
        return new WorkingStep(JudgingTexts.Bees, about, JudgingTexts.BeesSpreadSource);
    }

    private string Number(double value) => value.ToString("0.####", culture);
}
