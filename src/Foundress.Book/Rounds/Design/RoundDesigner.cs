using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Sampling;

namespace Foundress.Book.Rounds;

/// <summary>Works out what a number of jars buys: precision, detection and the two wrong decisions.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">Methods, lines and the documented aims.</param>
/// <param name="culture">How numbers are written in the sentences.</param>
public sealed class RoundDesigner(BookState state, KnowledgeBase knowledge, CultureInfo culture)
{
    private const double Sure = 0.95;
    private static readonly int[] UsualSizes = [3, 5, 8, 12];

    private readonly Dictionary<(Guid? Apiary, DateOnly Day, string Method), ColonySpread> _spreads = [];
    private readonly JudgingPolicy _policy = JudgingPolicy.Of(state, knowledge);

    /// <summary>The lines a round is planned against; none when no line per 100 bees that suits the method is in force that day.</summary>
    /// <param name="apiary">The apiary; null for one that is not in the book.</param>
    /// <param name="day">The day of the round.</param>
    /// <param name="method">Id of the counting method.</param>
    /// <exception cref="KnowledgeException">The method is not known.</exception>
    public LinesInForce? LinesFor(Apiary? apiary, DateOnly day, string method) =>
        _policy.On(apiary, day) is { Unit: Units.MitesPer100Bees } lines && lines.Deciding > 0 && lines.ScaleIds.Contains(knowledge.Methods[method].ScaleId) ? lines : null;

    /// <summary>What a number of colonies buys in an apiary.</summary>
    /// <param name="apiary">The apiary; null for one that is not in the book.</param>
    /// <param name="colonies">Colonies there are, at least 1.</param>
    /// <param name="take">Colonies to sample, 1 to all.</param>
    /// <param name="day">The day of the round.</param>
    /// <param name="method">Id of the counting method.</param>
    /// <param name="beesPerJar">Bees in a jar, at least 1; the documented number by default.</param>
    /// <returns>None when there is no line to plan against: <see cref="LinesFor"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    /// <exception cref="KnowledgeException">The method is not known.</exception>
    public RoundDesign? Of(Apiary? apiary, int colonies, int take, DateOnly day, string method, int? beesPerJar = null)
    {
        if (take < 1 || take > colonies)
            throw new ArgumentOutOfRangeException(nameof(take), take, $"Between 1 and {colonies} colonies can be sampled.");
        if (LinesFor(apiary, day, method) is not { } lines)
            return null;
        var design = knowledge.Sampling.Design;
        var aim = RoundAim.For(lines, knowledge);
        var spread = Spread(apiary, day, method);
        var bees = beesPerJar ?? (int)knowledge.Sampling.BeesPerJar.Value;
        var line = MiteLevel.Per100(lines.Deciding);
        var over = Math.Clamp((int)Math.Ceiling((colonies * design.ShareNotToMiss.Value / 100) - 1e-9), 1, colonies);
        var question = new DesignQuestion(
            colonies, 1, bees, line, MiteLevel.Per100(aim.Harmless), MiteLevel.Per100(aim.Harmful), spread.Shape, over);
        var rows = DesignTable.Of(question, [.. UsualSizes.Append(take).Distinct()]);
        var planned = rows.Single(row => row.Plan.Sample.Take == take);
        var forPrecision = PlanPrecision.ColoniesFor(design.Precision.Value / 100, colonies, 1, bees, line, spread.Shape);
        return new RoundDesign(
            question, spread, lines, rows, planned,
            take > 1 ? PlanPrecision.Splits(take, colonies, bees, line, spread.Shape) : [],
            forPrecision, ColonyDetection.ColoniesFor(colonies, over, Chance.Of(Sure)),
            Sentence(question, planned), Working(question, spread, lines, design, forPrecision));
    }

    /// <summary>How unequal the colonies of an apiary are taken to be. Worked out once for an apiary, day and method.</summary>
    /// <param name="apiary">The apiary; null for one that is not in the book.</param>
    /// <param name="day">The day of the round.</param>
    /// <param name="method">Id of the counting method.</param>
    /// <exception cref="KnowledgeException">The method is not known.</exception>
    public ColonySpread Spread(Apiary? apiary, DateOnly day, string method)
    {
        var key = (apiary?.Id.Value, day, method);
        if (!_spreads.TryGetValue(key, out var spread))
            _spreads[key] = spread = ColonySpread.Of(apiary?.Id, state, knowledge, method, day);
        return spread;
    }

    /// <summary>The rule by which a round may stop early in an apiary.</summary>
    /// <param name="apiary">The apiary; null for one that is not in the book.</param>
    /// <param name="day">The day of the round.</param>
    /// <param name="method">Id of the counting method.</param>
    /// <param name="low">A level at which to wait, mites per 100 bees; by default the documented share of the line.</param>
    /// <param name="high">A level at which to act, mites per 100 bees; by default the documented share of the line.</param>
    /// <param name="errorChance">Wanted chance of either wrong decision; by default the documented one.</param>
    /// <returns>None when there is no line to plan against, or the levels do not rise.</returns>
    /// <exception cref="KnowledgeException">The method is not known.</exception>
    public EarlyStop? EarlyStopOf(Apiary? apiary, DateOnly day, string method, double? low = null, double? high = null, double? errorChance = null)
    {
        if (LinesFor(apiary, day, method) is not { } lines)
            return null;
        var aim = RoundAim.For(lines, knowledge);
        var (wait, act) = (low ?? aim.Harmless, high ?? aim.Harmful);
        return wait < act
            ? new EarlyStop(wait, act, errorChance ?? aim.ErrorChance, Math.Round(Spread(apiary, day, method).Shape, 3), (int)knowledge.Sampling.BeesPerJar.Value)
            : null;
    }

    private string Sentence(DesignQuestion question, DesignRow row)
    {
        var range = $"{Say.Percent(Math.Round(1.96 * row.RelativeError, 2), culture)} of it";
        var mean = $"The mean of an apiary on the line would be known to within about {range}, 19 times in 20";
        var wrong = $"An apiary at {Say.Line(question.Harmful.Per100Bees, culture)} would be taken for one below the line {Say.InHundred(row.WaitsTooLong, culture)} times, one at {Say.Line(question.Harmless.Per100Bees, culture)} for one over it {Say.InHundred(row.ActsInVain, culture)} times";
        return question.ColoniesOver < question.Colonies && row.Plan.Sample.Take < question.Colonies
            ? $"{mean}. If {Say.Count(question.ColoniesOver, "colony was", "colonies were")} over it, at least one would be among those sampled {Say.InHundred(row.FindsOne, culture)} times. {wrong}."
            : $"{mean}. {wrong}.";
    }

    private List<WorkingStep> Working(DesignQuestion question, ColonySpread spread, LinesInForce lines, DesignDefaults design, SampleSize? forPrecision) =>
    [
        new("The line", $"{Say.Line(question.Line.Per100Bees, culture)} per 100 bees ({lines.Title})", lines.Source),
        new("How unequal colonies are", spread.Basis, spread.FromBook ? "hierarchical gamma-Poisson model of those jars" : design.Shape.Source.Text),
        new("Bees in a jar", question.BeesPerJar.ToString(culture), knowledge.Sampling.BeesPerJar.Source.Text),
        new("Harmless and harmful levels", $"{Say.Line(question.Harmless.Per100Bees, culture)} and {Say.Line(question.Harmful.Per100Bees, culture)} per 100 bees", design.HarmlessShareOfLine.Source.Text),
        new("Precision", $"standard error over mean √((1/m + f/k)/c) for an apiary on the line, m mites expected in a jar, k the shape, f the share not sampled, c colonies; for {Say.Percent(design.Precision.Value / 100, culture)} take {(forPrecision is { } size ? Say.Count(size.Take, "colony", "colonies") : "more than one jar from each colony")}", design.Precision.Source.Text),
        new("Finding one", "chance that at least one of the colonies over the line is drawn: exact, without replacement", "hypergeometric distribution; Cannon & Roe 1982; Cameron & Baldock 1998, Prev. Vet. Med. 34:1-17"),
        new("Wrong decisions", "the apiary judged by all mites over all bees; negative binomial counts", "docs/methods/design.md"),
    ];
}
