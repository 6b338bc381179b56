using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Controls;
using Foundress.Book.Forecasts;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Planning;

/// <summary>
/// Searches controls and dates for plans that keep the chance of standing over the line within the keeper's tolerance, with
/// few, harmless and easy controls.
/// </summary>
/// <remarks>
/// The method is in docs/methods/plan-search.md. It informs and never prescribes. Not safe for concurrent use; keep one for
/// each thread. The work goes in steps, so that a screen can show how far it is and stop it.
/// </remarks>
public sealed class ControlPlanner
{
    private readonly BookState _state;
    private readonly KnowledgeBase _knowledge;
    private readonly CultureInfo _culture;
    private readonly BroodSeasons _seasons;
    private readonly ControlList _controls;

    /// <summary>A planner for a book.</summary>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">Methods, lines, bees, mites and controls.</param>
    /// <param name="culture">How numbers are written in the sentences.</param>
    /// <param name="seasons">The bees' years made so far, when some are kept.</param>
    public ControlPlanner(BookState state, KnowledgeBase knowledge, CultureInfo culture, BroodSeasons? seasons = null)
    {
        (_state, _knowledge, _culture) = (state, knowledge, culture);
        _seasons = seasons ?? new BroodSeasons(knowledge);
        _controls = ControlList.Of(state, knowledge);
    }

    /// <summary>The chance of standing over the line that is borne where a search is given none, and where it comes from.</summary>
    public (double Value, string Source) Tolerance => ToleranceOf(_state, _knowledge);

    /// <summary>The same without a planner, for a screen that only shows it.</summary>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">Where the usual one stands.</param>
    public static (double Value, string Source) ToleranceOf(BookState state, KnowledgeBase knowledge) => state.Policy.Tolerance is { } own
        ? (own, PlanTexts.OwnSetting)
        : (knowledge.Controls.Planning.Tolerance.Value, knowledge.Controls.Planning.Tolerance.Source.Text);

    /// <summary>What the rules say of every control on a day that may lie ahead.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="on">The day.</param>
    /// <param name="options">Which colonies, and when supers come off and go on; the defaults when not given.</param>
    /// <returns>Workable ones first; empty where no colony lives.</returns>
    public IReadOnlyList<ControlOffer> Offers(Apiary apiary, DateOnly on, PlanOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(apiary);
        var how = options ?? new PlanOptions();
        var colonies = Living(apiary, on, how);
        return colonies.Count == 0 ? [] : ControlChoices.For(PlanSituations.On(apiary, [.. colonies.Select(colony => colony.Id)], _state, _knowledge, on, how), _controls);
    }

    /// <summary>The search in one go.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="today">The day it is made on; later entries are not used.</param>
    /// <param name="options">How; the defaults when not given.</param>
    /// <param name="cancellation">Stops it between two steps.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public ControlPlans Of(Apiary apiary, DateOnly today, PlanOptions? options = null, CancellationToken cancellation = default)
    {
        ControlPlans? plans = null;
        foreach (var step in Steps(apiary, today, options))
        {
            cancellation.ThrowIfCancellationRequested();
            plans = step.Plans;
        }

        return plans!;
    }

    /// <summary>The search step by step; the last step carries the plans.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="today">The day it is made on; later entries are not used.</param>
    /// <param name="options">How; the defaults when not given.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public IEnumerable<PlanStep> Steps(Apiary apiary, DateOnly today, PlanOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(apiary);
        return StepsOf(apiary, today, (options ?? new PlanOptions()).Checked());
    }

    private IEnumerable<PlanStep> StepsOf(Apiary apiary, DateOnly today, PlanOptions how)
    {
        var colonies = Living(apiary, today, how);
        if (colonies.Count == 0)
        {
            yield return new PlanStep(1, 1, PlanTexts.StepDone, Empty(apiary, today, how, PlanTexts.NoColonies));
            yield break;
        }

        var forecaster = new ApiaryForecaster(_state, _knowledge, _culture, _seasons);
        var lines = forecaster.LinesOf(apiary, today, how.Ahead);
        if (Array.TrueForAll(lines, line => line is null))
        {
            yield return new PlanStep(1, 1, PlanTexts.StepDone, Empty(apiary, today, how, PlanTexts.NoLine));
            yield break;
        }

        var scene = new PlanScene(apiary, colonies, _state, _knowledge, _seasons, _culture, today, how, forecaster, lines, (how.Tolerance ?? Tolerance.Value, how.Tolerance is null ? Tolerance.Source : PlanTexts.GivenForSearch));
        foreach (var step in scene.Steps(_controls))
            yield return step;
    }

    private List<Colony> Living(Apiary apiary, DateOnly day, PlanOptions how) =>
        [.. _state.ColoniesIn(apiary.Id, day).Where(colony => how.Colonies is not { } some || some.Contains(colony.Id))];

    private ControlPlans Empty(Apiary apiary, DateOnly today, PlanOptions how, string sentence) => new(
        apiary.Id, [], today, today.AddDays(how.Ahead), how.Tolerance ?? Tolerance.Value, Tolerance.Source, today, [], [], [], [], sentence, string.Empty);
}
