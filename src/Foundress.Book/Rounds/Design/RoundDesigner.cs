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
        var mean = RoundTexts.FormatDesignMean(Say.Percent(Math.Round(1.96 * row.RelativeError, 2), culture));
        var wrong = RoundTexts.FormatDesignWrong(
            Say.Line(question.Harmful.Per100Bees, culture), Say.InHundred(row.WaitsTooLong, culture),
            Say.Line(question.Harmless.Per100Bees, culture), Say.InHundred(row.ActsInVain, culture));
        return question.ColoniesOver < question.Colonies && row.Plan.Sample.Take < question.Colonies
            ? $"{mean} {Plural.Pick(question.ColoniesOver, RoundTexts.FormatDesignFinds(question.ColoniesOver, Say.InHundred(row.FindsOne, culture)))} {wrong}"
            : $"{mean} {wrong}";
    }

    private List<WorkingStep> Working(DesignQuestion question, ColonySpread spread, LinesInForce lines, DesignDefaults design, SampleSize? forPrecision) =>
    [
        new(RoundTexts.DesignLine, RoundTexts.FormatDesignLineHow(Say.Line(question.Line.Per100Bees, culture), lines.Title), lines.Source),
        new(RoundTexts.DesignSpread, spread.Basis, spread.FromBook ? RoundTexts.DesignSpreadSource : design.Shape.Source.Text),
        new(RoundTexts.DesignBees, question.BeesPerJar.ToString(culture), knowledge.Sampling.BeesPerJar.Source.Text),
        new(
            RoundTexts.DesignLevels, RoundTexts.FormatDesignLevelsHow(Say.Line(question.Harmless.Per100Bees, culture), Say.Line(question.Harmful.Per100Bees, culture)),
            design.HarmlessShareOfLine.Source.Text),
        new(RoundTexts.DesignPrecision, Precision(Say.Percent(design.Precision.Value / 100, culture), forPrecision), design.Precision.Source.Text),
        new(RoundTexts.DesignFinding, RoundTexts.DesignFindingHow, RoundTexts.DesignFindingSource),
        new(RoundTexts.DesignDecisions, RoundTexts.DesignDecisionsHow, "docs/methods/design.md"),
    ];

    private static string Precision(string wanted, SampleSize? size) => size is { } enough
        ? RoundTexts.FormatDesignPrecisionTake(wanted, Say.Colonies(enough.Take))
        : RoundTexts.FormatDesignPrecisionMore(wanted);
}
