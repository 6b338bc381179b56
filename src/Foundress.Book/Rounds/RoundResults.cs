using System.Globalization;
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
        var apiaries = round.Plan.Draws
            .Where(draw => state.Apiaries.ContainsKey(draw.Apiary))
            .Select(draw => Of(round, draw))
            .ToList();
        var next = apiaries
            .Select(result => DueDates.Next(result.Apiary, state, knowledge, today))
            .Where(due => due is not null)
            .MinBy(due => due!.On);
        return new RoundResult(round, round.Open.Count, apiaries, next);
    }

    private ApiaryResult Of(Round round, ApiaryDraw draw)
    {
        var apiary = state.Apiaries[draw.Apiary];
        var members = draw.Chosen.Concat(draw.Reserves).ToHashSet();
        var byColony = round.Jars
            .Where(jar => jar.Colony is { } colony && members.Contains(colony) && state.Colonies.ContainsKey(colony))
            .GroupBy(jar => jar.Colony!.Value)
            .ToList();
        var lines = _policy.On(apiary, round.Plan.On);
        var living = state.ColoniesIn(apiary.Id, round.Plan.On).Count;
        var skipped = draw.Chosen.Concat(draw.Reserves).Count(round.Skips.ContainsKey);
        var posterior = byColony.Count < 2 ? null : Posterior(byColony, Math.Max(0, living - byColony.Count));
        var ranked = Rank(apiary, byColony, posterior, lines);
        var line = lines?.Unit == Units.MitesPer100Bees && ranked.All(one => one.Reading.NotJudged is null)
            ? MiteLevel.Per100(lines.Deciding)
            : (MiteLevel?)null;
        var result = new ApiaryResult(
            apiary, living, byColony.Count, skipped, lines, posterior?.Mean, posterior?.MeanInterval(_policy.Confidence),
            line is { } at ? posterior?.ChanceMeanOver(at) : null,
            line is { } over ? posterior?.ExpectedUnsampledOver(over) : null,
            line is { } any ? posterior?.ChanceAnyUnsampledOver(any) : null,
            ranked, Doubts(round, ranked), string.Empty, []);
        return result with { Sentence = Sentence(result), Working = Working(result) };
    }

    private static ApiaryPosterior Posterior(IReadOnlyList<IGrouping<ColonyId, Jar>> byColony, int unsampled) => ApiaryPosterior.FromJars(
        [.. byColony.Select(group => new ColonyJars(
            group.Key.ToString(), [.. group.Select(jar => new JarCount(jar.Facts.Mites, jar.Facts.Bees.AsBeeCount))]))],
        unsampled);

    // Dampness and short shaking undercount (common practice, no source), so the keeper must see which jars they were.
    private List<string> Doubts(Round round, List<RankedColony> ranked)
    {
        var doubts = new List<string>();
        var wanted = knowledge.Methods.TryGet(round.Plan.Method, out var method) ? JarTimes.Of(method).Agitation : 0;
        foreach (var one in ranked)
        {
            if (one.Jar.Facts.Conditions?.AgitationSeconds is { } shaken && shaken < wanted)
                doubts.Add($"Colony {one.Colony.Name}: shaken {shaken} s instead of at least {wanted} s. It may count too low; take the jar again if it matters.");
            if (one.Jar.Facts.Conditions?.Damp == true)
                doubts.Add($"Colony {one.Colony.Name}: worked damp. It may count too low.");
        }

        return doubts;
    }

    private List<RankedColony> Rank(Apiary apiary, IReadOnlyList<IGrouping<ColonyId, Jar>> byColony, ApiaryPosterior? posterior, LinesInForce? lines)
    {
        var reader = new JarReader(knowledge, _policy, culture);
        var ranked = byColony.Select((group, index) =>
        {
            var jar = group.Last();
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
            return "No jar has been taken here yet.";
        if (result.Mean is not { } mean || result.MeanInterval is not { } interval)
            return "One colony says nothing of the others: take at least one more jar to judge the apiary.";
        var level = $"The apiary's mean is {Say.Level(mean.Per100Bees, culture)} per 100 ({Say.Level(interval.Lower.Per100Bees, culture)} to {Say.Level(interval.Upper.Per100Bees, culture)})";
        if (result.MeanOver is not { } meanOver || result.Lines is null)
            return level + "; it is not judged, because no line on this scale is set for now.";
        var line = Say.Line(result.Lines.Deciding, culture);
        var above = result.Ranked.Count(one => one.Reading.Standing == Standing.Above);
        var unsampled = result.Colonies - result.Sampled;
        var rest = unsampled == 0
            ? "every colony was sampled"
            : $"of the {Say.Count(unsampled, "colony", "colonies")} not sampled about {result.UnsampledOver!.Value.ToString("0.#", culture)} may be over it (chance of at least one: {Say.InHundred(result.AnyUnsampledOver!.Value, culture)})";
        return Judgement.Judge(meanOver, _policy.Certainty) switch
        {
            Standing.Above => $"{level}, over the line of {line} (chance {Say.InHundred(meanOver, culture)}): usually the whole apiary is given a treatment or other control, for mites move between colonies; {rest}.",
            Standing.Below when above == 0 && !(result.AnyUnsampledOver > Chance.Of(0.5)) => $"{level}, below the line of {line}; {rest}. Usually nothing is needed now.",
            Standing.Below => $"{level}, below the line of {line}, but single colonies are over it or may be: {rest}. Look at the highest colonies, and sample more before leaving the rest alone.",
            _ => $"{level}; whether it is over the line of {line} is not settled (chance {Say.InHundred(meanOver, culture)}). Take jars from more colonies; {rest}.",
        };
    }

    private List<WorkingStep> Working(ApiaryResult result)
    {
        var mites = result.Ranked.Sum(one => one.Jar.Facts.Mites);
        var bees = result.Ranked.Sum(one => one.Jar.Facts.Bees.Count);
        var steps = new List<WorkingStep>
        {
            new("Jars", $"{result.Sampled} of {result.Colonies} colonies; {mites} mites in {bees.ToString("0", culture)} bees: {Say.Level(bees > 0 ? 100 * mites / bees : 0, culture)} per 100 over all jars", "the counts"),
        };
        if (result.MeanInterval is { } interval)
        {
            steps.Add(new WorkingStep(
                "Apiary's level",
                $"each colony's level is drawn from a gamma distribution of unknown mean and shape, each count from a Poisson distribution; {Say.Percent(interval.Confidence, culture)} interval {Say.Level(interval.Lower.Per100Bees, culture)} to {Say.Level(interval.Upper.Per100Bees, culture)}",
                "hierarchical gamma-Poisson model, integrated numerically; see the method notes"));
        }

        if (result.Skipped > 0)
            steps.Add(new WorkingStep("Passed over", $"{Say.Count(result.Skipped, "colony", "colonies")}: if they were passed over for a reason that goes with mites, the result leans", "the round's own record"));
        return steps;
    }
}
