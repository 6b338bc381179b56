using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Controls;
using Foundress.Book.Forecasting;
using Foundress.Book.Forecasts;
using Foundress.Book.Journal;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Forecasting;
using Foundress.Science.Numerics;
using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>One search in one apiary, from the record to the short list.</summary>
internal sealed class PlanScene
{
    private readonly Apiary _apiary;
    private readonly IReadOnlyList<Colony> _colonies;
    private readonly ColonyId[] _ids;
    private readonly BookState _state;
    private readonly KnowledgeBase _knowledge;
    private readonly BroodSeasons _seasons;
    private readonly CultureInfo _culture;
    private readonly DateOnly _today;
    private readonly PlanOptions _how;
    private readonly ApiaryForecaster _forecaster;
    private readonly MiteLevel?[] _lines;
    private readonly (double Value, string Source) _tolerance;
    private readonly ulong _seed;
    private readonly double _recovery;
    private readonly double?[] _loads;
    private int _jars;

    internal PlanScene(
        Apiary apiary, IReadOnlyList<Colony> colonies, BookState state, KnowledgeBase knowledge, BroodSeasons seasons, CultureInfo culture, DateOnly today,
        PlanOptions how, ApiaryForecaster forecaster, MiteLevel?[] lines, (double Value, string Source) tolerance)
    {
        (_apiary, _colonies, _state, _knowledge, _seasons, _culture, _today, _how, _forecaster, _lines, _tolerance) =
            (apiary, colonies, state, knowledge, seasons, culture, today, how, forecaster, lines, tolerance);
        _ids = [.. colonies.Select(colony => colony.Id)];
        _seed = SeededGenerator.ForPart(how.Seed, apiary.Id.ToString()).NextUInt64();
        _recovery = HistoryBuilder.RecoveryOf(knowledge, forecaster.UsualMethod(colonies, today));
        _loads = [.. Enumerable.Range(0, (how.Ahead / how.Step) + 1).Select(day => lines[Math.Min(day * how.Step, lines.Length - 1)] is { } line ? line.PerBee / _recovery : (double?)null)];
    }

    internal IEnumerable<PlanStep> Steps(ControlList controls)
    {
        var parts = _colonies.Count + 2;
        var to = _today.AddDays(_how.Ahead);
        var first = _forecaster.StartOf(_colonies, _today, _how.RecordDays);
        var until = _today.DayNumber - first.DayNumber;
        yield return new PlanStep(0, parts, PlanTexts.StepReading);

        var histories = new ColonyHistory[_colonies.Count];
        var bees = new ColonyBees[_colonies.Count];
        for (var i = 0; i < histories.Length; i++)
        {
            bees[i] = ColonyBees.Of(_state, _seasons, _colonies[i].Id, first, to.AddDays(1));
            histories[i] = _forecaster.Reader.Read(_colonies[i], bees[i], first, _today);
        }

        _jars = histories.Sum(history => history.Evidence.ToArray().Count(count => count.Kind == EvidenceKind.Jar && count.Day <= until));
        yield return new PlanStep(1, parts, PlanTexts.StepLearning);
        var priors = _knowledge.Mites.Priors;
        var belief = ApiaryBelief.Learn(histories, priors, [.. Enumerable.Repeat(until, histories.Length)], new ColonyFilter(Math.Max(_how.Particles / 4, 64)), _seed);
        ColonyFilter[] filters = [.. Enumerable.Range(0, Math.Min(SideBySide.Width, histories.Length)).Select(_ => new ColonyFilter(_how.Particles))];
        var states = new PlanColony[histories.Length];
        for (var i = 0; i < histories.Length; i += filters.Length)
        {
            yield return new PlanStep(2 + i, parts, PlanTexts.StepLearning);
            var from = i;
            SideBySide.Each(Math.Min(filters.Length, histories.Length - i), beside =>
            {
                var (colony, filter) = (from + beside, filters[beside]);
                filter.Run(histories[colony], belief.For(histories[colony], colony), priors, until, SeededGenerator.ForPart(_how.Seed, _ids[colony].ToString()).NextUInt64());
                states[colony] = new PlanColony(filter, histories[colony], priors, _how.Particles, _how.Controls);
            });
        }

        var futures = new PlanFutures(_knowledge, histories, bees, to.AddDays(1));
        var uses = PlanUses.Find(_apiary, _ids, _state, _knowledge, controls, futures, (first, _today), _how);
        foreach (var step in Search(controls, futures, states, uses))
            yield return step;
    }

    private IEnumerable<PlanStep> Search(ControlList controls, PlanFutures futures, PlanColony[] states, PlanUses uses)
    {
        PlanCourse[] full = [.. states.Select(state => new PlanCourse(state, _loads, _how.Step))];
        var all = Enumerable.Range(0, states.Length).ToArray();
        var none = new PlanFan(_today, _loads.Length, _how.Step);
        var chances = new float[_loads.Length * states.Length];
        foreach (var done in Exactly([], futures, full, chances, none))
            yield return new PlanStep(done, 10 * states.Length, PlanTexts.StepNothing);
        var aim = new PlanAim(_tolerance.Value, JudgedFrom(new PlanReading(_how.Step, states.Length, chances, new PlanAim(_tolerance.Value, 0)), uses));
        var nothing = new PlanFinal([], PlanWeight.Nothing, new PlanReading(_how.Step, states.Length, chances, aim), none.Points(_recovery), []);
        var seen = Seen(nothing.Reading);
        var model = new PlanModel(
            uses.All, futures, seen, [.. seen.Select(i => new PlanCourse(states[i].Fewer(Math.Min(_how.SearchParticles, states[i].Particles)), _loads, _how.Step))],
            Rulings(controls, futures, seen), aim, _how.Step, _seed);
        var most = Math.Min(_how.Controls, states.Min(state => state.MostFurther));
        var search = new PlanSearch([.. uses.All.Select(use => use.Candidate)], model, new PlanLimits(nothing.Reading.Holds ? 0 : most, _how.Runs, Math.Max(8, _how.Runs / 2), 6));
        PlanSearchResult? result = null;
        foreach (var step in search.Steps())
        {
            result = step.Result;
            yield return new PlanStep(step.Done, step.Of + (10 * states.Length), PlanTexts.FormatStepTrying(step.Done));
        }

        var costs = uses.All.Count > 0 && uses.All.All(use => controls.CostOf(use.Agent.Id) is not null);
        var finals = new List<PlanFinal> { nothing };
        var picked = PlanFinalists.Pick(result!, uses.All, _tolerance.Value, costs);
        var rulings = Rulings(controls, futures, all);
        for (var i = 0; i < picked.Count; i++)
        {
            PlanUse[] plan = [.. picked[i].Plan.Select(place => uses.All[place])];
            if (Enumerable.Range(0, plan.Length).Any(at => rulings.Of(plan[..at], plan[at]) != PlanConflict.None) || Ruled(plan, controls, futures) is not { } ruled)
                continue;
            var fan = new PlanFan(_today, _loads.Length, _how.Step);
            chances = new float[chances.Length];
            foreach (var done in Exactly(plan, futures, full, chances, fan))
                yield return new PlanStep(result!.Tally.Run + (i * states.Length) + done, result.Tally.Run + (picked.Count * states.Length), PlanTexts.StepClosely);
            finals.Add(new PlanFinal(plan, picked[i].Weight, new PlanReading(_how.Step, states.Length, chances, aim), fan.Points(_recovery), ruled));
        }

        yield return new PlanStep(1, 1, PlanTexts.StepDone, new PlanList(_culture, _tolerance, _today, _today.AddDays(_how.Ahead), _today.AddDays(aim.JudgedFrom), _jars, _colonies, controls, costs)
            .Of(_apiary.Id, finals, result!.Tally, uses, LineSteps()));
    }

    private static PlanRulings Rulings(ControlList controls, PlanFutures futures, IReadOnlyList<int> colonies) => new(controls, (plan, on) =>
    {
        var (some, none) = (false, false);
        foreach (var colony in colonies)
        {
            var has = futures.Brood(colony, plan, on) == BroodState.Some;
            (some, none) = (some || has, none || !has);
        }

        return (some, none);
    });

    // The same rules as for a single control, with those of the plan before it as if they had been recorded.
    private IReadOnlyList<PlannedControl>? Ruled(PlanUse[] plan, ControlList controls, PlanFutures futures)
    {
        var planned = new List<PlannedControl>(plan.Length);
        for (var at = 0; at < plan.Length; at++)
        {
            var (use, earlier) = (plan[at], plan[..at]);
            var brood = Enumerable.Range(0, _ids.Length).Any(colony => futures.Brood(colony, earlier, use.Start) == BroodState.Some) ? BroodState.Some : BroodState.None;
            var situation = PlanSituations.On(_apiary, _ids, _state, _knowledge, use.Start, _how, brood);
            if (Array.Exists(earlier, before => before.IsHusbandry))
                situation = situation with { Brood = brood };
            var offer = ControlChoices.For(use.Agent, situation with { Courses = [.. situation.Courses ?? [], .. PlannedCourses.Of(earlier, _ids)] }, controls);
            if (offer.Workability == Workability.RuledOut)
                return null;
            planned.Add(new PlannedControl(use.Agent.Id, use.Agent.Title, use.Start, use.End, [.. offer.Missing.Select(reason => reason.Text), .. Expected(use, brood)], offer.Mind));
        }

        return planned;
    }

    private static IEnumerable<string> Expected(PlanUse use, BroodState brood)
    {
        if (brood == BroodState.None && use.Agent.Requirements.Any(one => one.Need == ControlNeed.Broodless))
            yield return PlanTexts.BroodlessExpected;
    }

    // All colonies with all particles, a few at a time.
    private IEnumerable<int> Exactly(IReadOnlyList<PlanUse> plan, PlanFutures futures, PlanCourse[] courses, float[] chances, PlanFan fan)
    {
        var lucks = PlanModel.LucksOf(plan, _seed);
        for (var first = 0; first < courses.Length; first += SideBySide.Width)
        {
            var from = first;
            SideBySide.Each(Math.Min(SideBySide.Width, courses.Length - first), beside =>
            {
                var colony = from + beside;
                var own = new float[_loads.Length];
                courses[colony].Read(futures.Days(colony, plan), lucks, own, fan.Add);
                for (var day = 0; day < own.Length; day++)
                    chances[(day * courses.Length) + colony] = own[day];
            });
            yield return first;
        }
    }

    // Where the tolerance is passed before any control could have worked, only later days can be asked of a plan.
    private int JudgedFrom(PlanReading nothing, PlanUses uses)
    {
        if (nothing.FirstOver is not { } over || uses.All.Count == 0)
            return 0;
        var settled = uses.All.Min(use => use.Candidate.Start) + (int)_knowledge.Controls.Planning.Settle.Value;
        return over < settled ? settled : 0;
    }

    // Those most likely over the line decide whether a plan holds; one from the middle stands for the rest.
    private int[] Seen(PlanReading nothing)
    {
        int[] worst = [.. Enumerable.Range(0, nothing.Colonies).OrderByDescending(nothing.PeakOf).ThenBy(colony => colony)];
        return worst.Length <= _how.SearchColonies ? worst : [.. worst.Take(_how.SearchColonies - 1), worst[worst.Length / 2]];
    }

    private IReadOnlyList<LineStep> LineSteps()
    {
        var steps = new List<LineStep>();
        for (var day = 0; day < _lines.Length; day++)
        {
            if (_lines[day] is { } line && (steps.Count == 0 || steps[^1].Act != line.Per100Bees))
                steps.Add(new LineStep(_today.AddDays(day), _today.AddDays(day), null, line.Per100Bees));
            else if (steps.Count > 0)
                steps[^1] = steps[^1] with { To = _today.AddDays(day) };
        }

        return steps;
    }
}
