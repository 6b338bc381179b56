using System.Globalization;
using Foundress.Book.Changes;
using Foundress.Book.Judging;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Rounds;

/// <summary>Works out what a round says of each apiary: its level, its colonies ranked, and the colonies nobody sampled.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">Methods and lines.</param>
/// <param name="culture">How numbers are written in the sentences.</param>
public sealed class RoundResults(BookState state, KnowledgeBase knowledge, CultureInfo culture)
{
    private readonly JudgingPolicy _policy = JudgingPolicy.Of(state, knowledge);

    /// <summary>The result of a round as far as it has come.</summary>
    /// <param name="round">The round.</param>
    /// <param name="today">The reader's day.</param>
    public RoundResult Of(Round round, DateOnly today)
    {
        var places = round.Plan.Draws
            .Where(draw => state.Apiaries.ContainsKey(draw.Apiary))
            .Select(draw => (Draw: draw, Living: state.ColoniesIn(draw.Apiary, round.Plan.On).Count, Visit: Visit(round, draw)))
            .ToList();
        var pooled = Pool([.. places.Where(place => place.Visit.Colonies.Count > 0)
            .Select(place => (place.Draw.Apiary, new ApiaryJars(place.Draw.Apiary.ToString(), place.Visit.Counts, Math.Max(0, place.Living - place.Visit.Colonies.Count))))]);
        var apiaries = places.Select(place => Of(round, place.Draw, place.Visit, place.Living, pooled)).ToList();
        var next = apiaries
            .Select(result => DueDates.Next(result.Apiary, state, knowledge, today))
            .Where(due => due is not null)
            .MinBy(due => due!.On);
        return new RoundResult(round, round.Open.Count, apiaries, pooled is null ? null : Whole(pooled, apiaries), next);
    }

    private ApiaryVisit Visit(Round round, ApiaryDraw draw)
    {
        var members = draw.Chosen.Concat(draw.Reserves).ToHashSet();
        var jars = round.Jars.Where(jar => jar.Colony is { } colony && members.Contains(colony) && state.Colonies.ContainsKey(colony)).ToList();
        return new ApiaryVisit(
            draw.Apiary,
            jars.Count > 0 ? jars.Max(jar => jar.Facts.On) : round.Plan.On,
            round.Plan.Method,
            round.Id,
            [.. jars.GroupBy(jar => jar.Colony!.Value).Select(group => KeyValuePair.Create(group.Key, (IReadOnlyList<Jar>)[.. group]))]);
    }

    // Apiaries of one round share the season and often the stock: one with few jars is drawn towards the others.
    private static OperationPosterior? Pool(IReadOnlyList<(ApiaryId Apiary, ApiaryJars Jars)> sampled) =>
        sampled.Count < 2 ? null : OperationPosterior.FromJars([.. sampled.Select(place => place.Jars)]);

    private static ApiaryPosterior? PosteriorOf(ApiaryVisit visit, int living, OperationPosterior? pooled) => visit.Colonies.Count switch
    {
        0 => null,
        _ when pooled is not null => pooled.Apiaries[pooled.Names.ToList().IndexOf(visit.Apiary.ToString())],
        1 => null,
        _ => visit.Posterior(living),
    };

    private ApiaryResult Of(Round round, ApiaryDraw draw, ApiaryVisit visit, int living, OperationPosterior? pooled)
    {
        var apiary = state.Apiaries[draw.Apiary];
        var lines = _policy.On(apiary, round.Plan.On);
        var skipped = draw.Chosen.Concat(draw.Reserves).Count(round.Skips.ContainsKey);
        var posterior = PosteriorOf(visit, living, pooled);
        var ranked = Rank(apiary, visit, posterior, lines);
        var line = lines?.Unit == Units.MitesPer100Bees && ranked.All(one => one.Reading.NotJudged is null)
            ? MiteLevel.Per100(lines.Deciding)
            : (MiteLevel?)null;
        // Each round on its own evidence: what the other apiaries lend now they did not lend then.
        var change = visit.Colonies.Count < 2 ? null : new ChangeReader(state, knowledge, _policy.Confidence, culture).OfApiary(visit, pooled is null ? posterior! : visit.Posterior(living));
        var result = new ApiaryResult(
            apiary, living, visit.Colonies.Count, skipped, lines, posterior?.Mean, posterior?.MeanInterval(_policy.Confidence),
            line is { } at ? posterior?.ChanceMeanOver(at) : null,
            line is { } over ? posterior?.ExpectedUnsampledOver(over) : null,
            line is { } any ? posterior?.ChanceAnyUnsampledOver(any) : null,
            ranked, Doubts(round, ranked), pooled is not null && posterior is not null, change, StopRule.Of(draw)?.Read(round, draw, culture), string.Empty, []);
        return result with { Sentence = Sentence(result), Working = Working(result, posterior) };
    }

    private string Whole(OperationPosterior pooled, IReadOnlyList<ApiaryResult> apiaries)
    {
        var colonies = apiaries.Where(place => place.Sampled > 0).Sum(place => place.Colonies);
        var (sampled, living, mean) = (Say.Apiaries(pooled.Apiaries.Count), Say.Colonies(colonies), Say.Level(pooled.Mean.Per100Bees, culture));
        var lines = apiaries.Where(place => place.MeanOver is not null).Select(place => place.Lines!.Deciding).Distinct().ToList();
        var sentence = lines.Count == 1 && apiaries.All(place => place.Sampled == 0 || place.MeanOver is not null)
            ? RoundTexts.FormatWholeWithOver(sampled, living, mean, pooled.ExpectedOver(MiteLevel.Per100(lines[0])).ToString("0.#", culture), Say.Line(lines[0], culture))
            : RoundTexts.FormatWhole(sampled, living, mean);
        return $"{sentence} {RoundTexts.FormatBetweenApiaries(Math.Exp(pooled.BetweenApiaries).ToString("0.0", culture))}";
    }

    // Dampness and short shaking undercount (common practice, no source), so the keeper must see which jars they were.
    private List<string> Doubts(Round round, List<RankedColony> ranked)
    {
        var doubts = new List<string>();
        var wanted = knowledge.Methods.TryGet(round.Plan.Method, out var method) ? JarTimes.Of(method).Agitation : 0;
        foreach (var one in ranked)
        {
            if (one.Jar.Facts.Conditions?.AgitationSeconds is { } shaken && shaken < wanted)
                doubts.Add(RoundTexts.FormatDoubtShaken(one.Colony.Name, shaken, wanted));
            if (one.Jar.Facts.Conditions?.Damp == true)
                doubts.Add(RoundTexts.FormatDoubtDamp(one.Colony.Name));
        }

        return doubts;
    }

    private List<RankedColony> Rank(Apiary apiary, ApiaryVisit visit, ApiaryPosterior? posterior, LinesInForce? lines)
    {
        var reader = new JarReader(knowledge, _policy, culture);
        var ranked = visit.Colonies.Select((group, index) =>
        {
            var jar = group.Value[^1];
            var reading = reader.Read(jar.Facts, apiary);
            var shrunk = posterior?.Sampled[index];
            return new RankedColony(
                state.Colonies[group.Key], jar, reading, shrunk?.Interval(_policy.Confidence),
                shrunk is not null && lines is not null && reading.NotJudged is null ? shrunk.ChanceOver(MiteLevel.Per100(lines.Deciding)) : null);
        });
        return [.. ranked.OrderByDescending(one => one.Reading.Level.Per100Bees).ThenBy(one => one.Colony.Name, NaturalOrder.Instance)];
    }

    private string Sentence(ApiaryResult result)
    {
        if (result.Sampled == 0)
            return RoundTexts.NoJarYet;
        if (result.Mean is not { } middle || result.MeanInterval is not { } interval)
            return RoundTexts.OneColony;
        var (mean, lower, upper) = (Say.Level(middle.Per100Bees, culture), Say.Level(interval.Lower.Per100Bees, culture), Say.Level(interval.Upper.Per100Bees, culture));
        if (result.MeanOver is not { } meanOver || result.Lines is null)
            return RoundTexts.FormatNotJudged(mean, lower, upper);
        var line = Say.Line(result.Lines.Deciding, culture);
        var above = result.Ranked.Count(one => one.Reading.Standing == Standing.Above);
        var unsampled = result.Colonies - result.Sampled;
        var rest = unsampled == 0
            ? RoundTexts.EveryColony
            : Plural.Pick(unsampled, RoundTexts.FormatUnsampled(unsampled, result.UnsampledOver!.Value.ToString("0.#", culture), Say.InHundred(result.AnyUnsampledOver!.Value, culture)));
        return Judgement.Judge(meanOver, _policy.Certainty) switch
        {
            Standing.Above => RoundTexts.FormatMeanOver(mean, lower, upper, line, Say.InHundred(meanOver, culture), rest),
            Standing.Below when above == 0 && !(result.AnyUnsampledOver > Chance.Of(0.5)) => RoundTexts.FormatMeanBelow(mean, lower, upper, line, rest),
            Standing.Below => RoundTexts.FormatMeanBelowColoniesOver(mean, lower, upper, line, rest),
            _ => RoundTexts.FormatMeanUnclear(mean, lower, upper, line, Say.InHundred(meanOver, culture), rest),
        };
    }

    private List<WorkingStep> Working(ApiaryResult result, ApiaryPosterior? posterior)
    {
        var mites = result.Ranked.Sum(one => one.Jar.Facts.Mites);
        var bees = result.Ranked.Sum(one => one.Jar.Facts.Bees.Count);
        var steps = new List<WorkingStep>
        {
            new(
                RoundTexts.Jars,
                RoundTexts.FormatJarsHow(result.Sampled, result.Colonies, mites, bees.ToString("0", culture), Say.Level(bees > 0 ? 100 * mites / bees : 0, culture)),
                RoundTexts.JarsSource),
        };
        if (posterior is not null && result.MeanInterval is { } interval)
        {
            steps.Add(new WorkingStep(
                RoundTexts.ApiaryLevel,
                RoundTexts.FormatApiaryLevelHow(Say.Percent(interval.Confidence, culture), Say.Level(interval.Lower.Per100Bees, culture), Say.Level(interval.Upper.Per100Bees, culture)),
                RoundTexts.ApiaryLevelSource));
            if (result.Pooled)
                steps.Add(new WorkingStep(RoundTexts.OtherApiaries, RoundTexts.OtherApiariesHow, RoundTexts.OtherApiariesSource));
            steps.Add(new WorkingStep(
                RoundTexts.Spread,
                posterior.SpreadIdentified
                    ? RoundTexts.FormatSpreadHow(Share(posterior.Spread.Median), Share(posterior.Spread.Quantile(0.05)), Share(posterior.Spread.Quantile(0.95)))
                    : RoundTexts.SpreadUnknown,
                RoundTexts.SpreadSource));
        }

        if (result.MeanOver is { } over && result.Lines is { } lines)
        {
            var sure = _policy.Certainty;
            steps.Add(new WorkingStep(
                RoundTexts.Follows,
                RoundTexts.FormatFollowsHow(Say.Line(lines.Deciding, culture), Say.InHundred(over, culture), Say.InHundred(sure.SureAbove, culture), Say.InHundred(sure.SureBelow, culture)),
                RoundTexts.FormatFollowsSource(lines.Source)));
        }

        if (result.Skipped > 0)
            steps.Add(new WorkingStep(RoundTexts.PassedOver, Plural.Pick(result.Skipped, RoundTexts.FormatPassedOverHow(result.Skipped)), RoundTexts.PassedOverSource));
        return steps;

        string Share(double share) => Say.Percent(Math.Round(share, 2), culture);
    }
}
