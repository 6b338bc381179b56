using System.Globalization;
using Foundress.Book.Changes;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Sampling;

namespace Foundress.Book.Rounds;

/// <summary>The rule by which a round may stop early in one apiary: its chart, how such rounds end, and where this one stands.</summary>
public sealed class StopRule
{
    private readonly SequentialPlan _plan;
    private SequentialOutcome? _atLow;
    private SequentialOutcome? _atHigh;

    /// <summary>A rule.</summary>
    /// <param name="early">What it is to tell apart; keeps to <see cref="Rules.RecordRules"/>.</param>
    /// <param name="mostJars">Jars after which the round ends anyway, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range, or the chart would need more than 20,000 mites.</exception>
    public StopRule(EarlyStop early, int mostJars)
    {
        ArgumentNullException.ThrowIfNull(early);
        Early = early;
        _plan = new SequentialPlan(
            new SequentialAim(MiteLevel.Per100(early.Low), MiteLevel.Per100(early.High), early.ErrorChance, early.ErrorChance, early.BeesPerJar, mostJars),
            CountLaw.Clumped(early.Shape));
    }

    /// <summary>What it is to tell apart.</summary>
    public EarlyStop Early { get; }

    /// <summary>The chart: a row for each number of jars, the last one without going on.</summary>
    public IReadOnlyList<SequentialLine> Lines => _plan.Lines;

    /// <summary>How rounds end where the level is the low one: exact.</summary>
    public SequentialOutcome AtLow => _atLow ??= _plan.OutcomeAt(_plan.Aim.Low);

    /// <summary>How rounds end where the level is the high one: exact.</summary>
    public SequentialOutcome AtHigh => _atHigh ??= _plan.OutcomeAt(_plan.Aim.High);

    /// <summary>How rounds end at a level, mites per 100 bees from 0 to 100: exact.</summary>
    public SequentialOutcome At(double per100) => _plan.OutcomeAt(MiteLevel.Per100(per100));

    /// <summary>Mites so far from which the apiary's mean is known as precisely as wanted, whatever it is: Green's stop line for colonies that differ.</summary>
    /// <param name="precision">Wanted standard error over mean, above 0 and at most 1.</param>
    /// <param name="jars">Jars taken, one from each colony, at least 1.</param>
    /// <returns>None while so few colonies cannot give that precision.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public int? PreciseFrom(double precision, int jars) =>
        StopLine.Clumped(precision, Early.Shape, jars) is { } mites && mites < int.MaxValue ? (int)Math.Ceiling(mites - 1e-9) : null;

    /// <summary>The rule of an apiary of a round; none where the round is of fixed size.</summary>
    public static StopRule? Of(ApiaryDraw draw)
    {
        ArgumentNullException.ThrowIfNull(draw);
        return draw.EarlyStop is { } early && draw.Chosen.Count > 0 ? new StopRule(early, draw.Chosen.Count) : null;
    }

    /// <summary>What the rule says of how such rounds end, in words.</summary>
    /// <param name="culture">How numbers are written.</param>
    public string Promise(CultureInfo culture) => RoundTexts.FormatStopPromise(
        Say.Line(Early.Low, culture), AtLow.AverageJars.ToString("0.0", culture), Say.InHundred(AtLow.Act, culture),
        Say.Line(Early.High, culture), AtHigh.AverageJars.ToString("0.0", culture), Say.InHundred(AtHigh.Wait, culture));

    /// <summary>Where a round stands in an apiary.</summary>
    /// <param name="round">The round.</param>
    /// <param name="draw">Its draw in the apiary.</param>
    /// <param name="culture">How numbers are written in the sentence.</param>
    /// <remarks>The jars are taken in the order of the book; only the first jars of a colony count, for the rule is about colonies drawn at random.</remarks>
    public StopReading Read(Round round, ApiaryDraw draw, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(round);
        ArgumentNullException.ThrowIfNull(draw);
        var members = draw.Chosen.Concat(draw.Reserves).ToHashSet();
        var jars = round.Jars.Where(jar => jar.Colony is { } colony && members.Contains(colony)).DistinctBy(jar => jar.Colony).ToList();
        return Read(ApiaryVisit.CountsOf(jars), culture);
    }

    /// <summary>Where a round stands after jars in the order taken, one from each colony.</summary>
    /// <param name="jars">The jars.</param>
    /// <param name="culture">How numbers are written in the sentence.</param>
    public StopReading Read(IReadOnlyList<JarCount> jars, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(jars);
        var reading = _plan.Judge(jars);
        var mites = jars.Take(reading.Jars).Sum(jar => jar.Mites);
        var (counted, taken) = (Say.Mites(mites), Say.Jars(reading.Jars));
        var (low, high) = (Say.Line(Early.Low, culture), Say.Line(Early.High, culture));
        var sentence = reading.Decision switch
        {
            SequentialDecision.Wait => RoundTexts.FormatStopWait(counted, taken, low, high),
            SequentialDecision.Act => RoundTexts.FormatStopAct(counted, taken, high, low),
            _ when jars.Count == 0 => RoundTexts.NoJarYet,
            _ => RoundTexts.FormatStopGoOn(counted, taken, low, high),
        };
        return new StopReading(reading.Decision, reading.Jars, mites, sentence);
    }
}
