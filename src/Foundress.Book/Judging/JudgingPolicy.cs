using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Judging;

namespace Foundress.Book.Judging;

/// <summary>How an operation judges: the keeper's settings where given, the documented defaults elsewhere.</summary>
public sealed class JudgingPolicy
{
    private readonly KnowledgeBase _knowledge;
    private readonly PolicyRecord _settings;

    private JudgingPolicy(KnowledgeBase knowledge, PolicyRecord settings)
    {
        (_knowledge, _settings) = (knowledge, settings);
        Confidence = settings.Confidence ?? knowledge.Judging.Confidence.Value;
        Certainty = new Certainty(
            Chance.Of(settings.SureBelow ?? knowledge.Judging.SureBelow.Value),
            Chance.Of(settings.SureAbove ?? knowledge.Judging.SureAbove.Value));
    }

    /// <summary>Confidence of every interval, for example 0.95.</summary>
    public double Confidence { get; }

    /// <summary>How sure a jar must make us before it counts as below or above the line.</summary>
    public Certainty Certainty { get; }

    /// <summary>The policy of an operation.</summary>
    public static JudgingPolicy Of(BookState state, KnowledgeBase knowledge) => Of(state.Policy, knowledge);

    /// <summary>The policy that settings alone make, for instance those given for one command.</summary>
    public static JudgingPolicy Of(PolicyRecord settings, KnowledgeBase knowledge) => new(knowledge, settings);

    /// <summary>The lines in force in an apiary on a day.</summary>
    /// <param name="apiary">The apiary; null for a jar without one: a northern, temperate site is then assumed.</param>
    /// <param name="day">The day.</param>
    /// <returns>The lines, or null when the chosen set has none for that time of year.</returns>
    public LinesInForce? On(Apiary? apiary, DateOnly day)
    {
        var id = apiary?.LinePolicy ?? _settings.LinePolicy ?? _knowledge.Judging.DefaultPolicyId;
        return id == PolicyRules.Own ? OwnLines() : On(id, apiary, day);
    }

    /// <summary>The lines in force for counts that are not taken on a jar: those the keeper chose for that scale; there is no default.</summary>
    /// <param name="scaleId">One of <see cref="OtherScales"/>.</param>
    /// <param name="apiary">The apiary; null where none is known.</param>
    /// <param name="day">The day.</param>
    /// <returns>The lines, or null when none are chosen or the chosen set has none for that time of year.</returns>
    public LinesInForce? OnScale(string scaleId, Apiary? apiary, DateOnly day) => ChosenFor(scaleId) is { } id ? On(id, apiary, day) : null;

    /// <summary>The set of lines the keeper chose for a scale; null when none is chosen.</summary>
    /// <param name="scaleId">One of <see cref="OtherScales"/>.</param>
    public string? ChosenFor(string scaleId)
    {
        var id = scaleId switch
        {
            OtherScales.Fall => _settings.FallLines,
            OtherScales.DroneCells => _settings.DroneLines,
            OtherScales.WorkerCells => _settings.WorkerLines,
            _ => null,
        };
        return id == OtherScales.NoLines ? null : id;
    }

    /// <summary>The lines that every published set for a scale gives for a day.</summary>
    /// <param name="scaleId">The scale.</param>
    /// <param name="apiary">The apiary; null where none is known.</param>
    /// <param name="day">The day.</param>
    public IReadOnlyList<LinesInForce> Published(string scaleId, Apiary? apiary, DateOnly day) =>
        [.. _knowledge.LinePolicies.Where(policy => policy.AppliesTo(scaleId)).Select(policy => On(policy.Id, apiary, day)).OfType<LinesInForce>()];

    private LinesInForce? On(string id, Apiary? apiary, DateOnly day)
    {
        if (!_knowledge.LinePolicies.TryGet(id, out var policy))
            return null;
        var phase = SiteSeason.Of(apiary, _knowledge).PhaseOn(day);
        var row = policy.For(phase, day.Month, apiary?.Hemisphere ?? policy.Hemisphere);
        if (row is null || (row.Act ?? row.Watch) is not { } deciding)
            return null;
        return new LinesInForce(
            policy.Id, policy.Title, [policy.ScaleId, .. policy.AlsoUsedOn], deciding.Unit,
            row.Watch?.Value, row.Act?.Value, deciding.Source.Text);
    }

    private LinesInForce? OwnLines()
    {
        if (_settings.OwnAct is null)
            return null;
        var jarScales = _knowledge.Methods.Where(method => method.IsJar).Select(method => method.ScaleId).Distinct();
        return new LinesInForce(
            PolicyRules.Own, JudgingTexts.OwnLinesTitle, [.. jarScales], Units.MitesPer100Bees, _settings.OwnWatch, _settings.OwnAct, JudgingTexts.KeepersOwnLine);
    }

    /// <summary>One line given for the moment, for instance on the command line.</summary>
    /// <param name="act">Mites per 100 bees.</param>
    /// <param name="knowledge">The known methods.</param>
    public static LinesInForce Given(double act, KnowledgeBase knowledge)
    {
        var line = MiteLevel.Per100(act).Per100Bees;
        return new LinesInForce(
            PolicyRules.Own, JudgingTexts.LineGivenTitle, [.. knowledge.Methods.Where(method => method.IsJar).Select(method => method.ScaleId).Distinct()],
            Units.MitesPer100Bees, null, line, JudgingTexts.KeepersOwnLine);
    }
}
