namespace Foundress.Science.Planning;

/// <summary>
/// Looks for the plans of controls worth a keeper's choice: those that keep the chance of standing over the line within the
/// tolerance with few, harmless and easy controls, and those that come nearest where none does.
/// </summary>
/// <remarks>
/// Plans are grown by the day, one control at a time. Three rules drop plans without working them out and lose nothing:
/// <list type="number">
/// <item>nothing before a control's first day can change, so a control that starts after the tolerance is passed cannot keep it;</item>
/// <item>a plan that keeps the tolerance needs no further control;</item>
/// <item>a plan heavier than one that keeps the tolerance, in every respect (branch and bound: weights only grow), is not wanted.</item>
/// </list>
/// Where more plans are left than may be worked out, a first reckoning chooses: effects of controls worked out one by one are
/// put together on the scale of normal deviates. That choice may miss a plan; the tally says how many were left aside.
/// Deterministic. docs/methods/plan-search.md.
/// </remarks>
public sealed class PlanSearch
{
    // So many plans between two steps, for a screen to have its turn.
    private const int Chunk = 12;

    private readonly PlanCandidate[] _candidates;
    private readonly IPlanModel _model;
    private readonly PlanLimits _limits;
    private readonly List<PlanOutcome> _outcomes = [];
    private readonly List<PlanWeight> _kept = [];
    private readonly SortedDictionary<int, int> _conflicts = [];
    private PlanReading?[] _alone = [];
    private int _run;
    private int _tooLate;
    private int _heavier;
    private int _notNeeded;
    private int _leftAside;

    /// <summary>A search; good for one run.</summary>
    /// <param name="candidates">The controls on their days, by day.</param>
    /// <param name="model">The colonies.</param>
    /// <param name="limits">How far to go.</param>
    /// <exception cref="ArgumentException">The candidates are not by day, or a value is out of its range.</exception>
    public PlanSearch(IReadOnlyList<PlanCandidate> candidates, IPlanModel model, PlanLimits limits)
    {
        ArgumentNullException.ThrowIfNull(model);
        _candidates = [.. candidates.Select(candidate => candidate.Checked())];
        for (int i = 1; i < _candidates.Length; i++)
        {
            if (_candidates[i].Start < _candidates[i - 1].Start)
                throw new ArgumentException($"Candidate {i} starts on day {_candidates[i].Start}, before the one in front of it: give them by day.", nameof(candidates));
        }

        (_model, _limits) = (model, limits.Checked());
    }

    /// <summary>Searches in one go.</summary>
    public PlanSearchResult Find()
    {
        PlanSearchResult? result = null;
        foreach (PlanSearchStep step in Steps())
            result = step.Result;
        return result!;
    }

    /// <summary>Searches step by step; the last step carries the result.</summary>
    public IEnumerable<PlanSearchStep> Steps()
    {
        PlanOutcome nothing = new([], _model.Nothing(), PlanWeight.Nothing);
        _outcomes.Add(nothing);
        _run = 1;
        if (nothing.Reading.Holds || _limits.Controls == 0)
        {
            yield return new(1, 1, Result());
            yield break;
        }

        int expected = 1 + _candidates.Length;
        foreach (int done in Alone())
            yield return new(done, expected + ExpectedRuns(_limits.Controls - 1), null);
        List<PlanOutcome> parents = Parents(1);
        for (int controls = 2; controls <= _limits.Controls && parents.Count > 0; controls++)
        {
            List<Child> children = Pick(Children(parents, nothing.Reading));
            expected = _run + children.Count + ExpectedRuns(_limits.Controls - controls);
            foreach (int done in Work(parents, children))
                yield return new(done, expected, null);
            parents = Parents(controls);
        }

        yield return new(_run, _run, Result());
    }

    private int ExpectedRuns(int levels) => levels * Math.Min(_limits.Runs, 10 * _candidates.Length);

    // Every control by itself: as a plan where it may be one, and in any case to know what it does.
    private IEnumerable<int> Alone()
    {
        _alone = new PlanReading?[_candidates.Length];
        for (int first = 0; first < _candidates.Length; first += Chunk)
        {
            int[] further = [.. Enumerable.Range(first, Math.Min(Chunk, _candidates.Length - first))];
            IReadOnlyList<PlanReading> readings = _model.Further([], further);
            for (int i = 0; i < further.Length; i++)
            {
                _alone[further[i]] = readings[i];
                _run++;
                if (Fits([], further[i]))
                    Add([further[i]], readings[i], PlanWeight.Nothing.With(_candidates[further[i]]));
            }

            yield return _run;
        }
    }

    private List<Child> Children(List<PlanOutcome> parents, PlanReading nothing)
    {
        List<Child> children = [];
        for (int at = 0; at < parents.Count; at++)
        {
            PlanOutcome parent = parents[at];
            int last = _candidates[parent.Plan[^1]].Start;
            for (int next = parent.Plan[^1] + 1; next < _candidates.Length; next++)
            {
                PlanCandidate candidate = _candidates[next];
                if (candidate.Start <= last)
                    continue;
                if (parent.Reading.Holds)
                {
                    _notNeeded++;
                    continue;
                }

                if (candidate.Start >= parent.Reading.FirstOver)
                {
                    _tooLate++;
                    continue;
                }

                PlanWeight weight = parent.Weight.With(candidate);
                if (_kept.Exists(kept => kept.AtMost(weight)))
                {
                    _heavier++;
                    continue;
                }

                if (Fits(parent.Plan, next))
                    children.Add(new(at, next, Guess(parent.Reading, _alone[next]!, nothing), weight, Kinds(parent.Plan, next)));
            }
        }

        return children;
    }

    private bool Fits(IReadOnlyList<int> earlier, int next)
    {
        int conflict = _model.Conflict(earlier, next);
        if (conflict >= 0)
            _conflicts[conflict] = _conflicts.GetValueOrDefault(conflict) + 1;
        return conflict < 0;
    }

    // The greatest deviate of any day and colony that counts, were the effects simply to add up.
    private static float Guess(PlanReading parent, PlanReading alone, PlanReading nothing)
    {
        float[] with = parent.Probits;
        float[] one = alone.Probits;
        float[] none = nothing.Probits;
        float worst = float.NegativeInfinity;
        for (int cell = parent.FirstJudged; cell < with.Length; cell++)
            worst = Math.Max(worst, with[cell] + one[cell] - none[cell]);
        return worst;
    }

    // The same for the same controls, whatever their days and order.
    private ulong Kinds(IReadOnlyList<int> plan, int next)
    {
        Span<int> kinds = stackalloc int[plan.Count + 1];
        for (int i = 0; i < plan.Count; i++)
            kinds[i] = _candidates[plan[i]].Control;
        kinds[^1] = _candidates[next].Control;
        kinds.Sort();
        ulong key = 0;
        foreach (int kind in kinds)
            key = unchecked((key * 4099UL) + (ulong)kind + 1UL);
        return key;
    }

    // Half of the room for the lowest guesses, a quarter for the gentlest of those that look as if they would do, a quarter for those without chemicals.
    private List<Child> Pick(List<Child> children)
    {
        if (children.Count <= _limits.Runs)
            return children;
        float limit = (float)Numerics.NormalDistribution.Quantile(_outcomes[0].Reading.Aim.Tolerance);
        HashSet<(int, int)> chosen = [];
        List<Child> picked = [];
        Take(children.Where(child => child.Weight.NonChemical).OrderBy(child => child.Guess), _limits.Runs / 4);
        Take(
            children.Where(child => child.Guess <= limit)
                .OrderBy(child => child.Weight.WorstHazard).ThenBy(child => child.Weight.Hazard).ThenBy(child => child.Weight.Labour).ThenBy(child => child.Guess),
            _limits.Runs / 4);
        Take(children.OrderBy(child => child.Guess), _limits.Runs - picked.Count);
        _leftAside += children.Count - picked.Count;
        return [.. picked.OrderBy(child => child.Parent).ThenBy(child => child.Next)];

        void Take(IEnumerable<Child> from, int most)
        {
            Dictionary<ulong, int> dates = [];
            int taken = 0;
            foreach (Child child in from)
            {
                if (taken >= most)
                    return;
                int same = dates.GetValueOrDefault(child.Kinds);
                if (same >= _limits.DatesEach || !chosen.Add((child.Parent, child.Next)))
                    continue;
                dates[child.Kinds] = same + 1;
                picked.Add(child);
                taken++;
            }
        }
    }

    private IEnumerable<int> Work(List<PlanOutcome> parents, List<Child> children)
    {
        for (int first = 0; first < children.Count;)
        {
            PlanOutcome parent = parents[children[first].Parent];
            int end = first;
            while (end < children.Count && end - first < Chunk && children[end].Parent == children[first].Parent)
                end++;
            List<Child> group = children.GetRange(first, end - first);
            IReadOnlyList<PlanReading> readings = _model.Further(parent.Plan, [.. group.Select(child => child.Next)]);
            for (int i = 0; i < group.Count; i++)
            {
                _run++;
                Add([.. parent.Plan, group[i].Next], readings[i], group[i].Weight);
            }

            first = end;
            yield return _run;
        }
    }

    private void Add(int[] plan, PlanReading reading, PlanWeight weight)
    {
        _outcomes.Add(new(plan, reading, weight));
        if (!reading.Holds || _kept.Exists(kept => kept.AtMost(weight)))
            return;
        _kept.RemoveAll(kept => weight.AtMost(kept));
        _kept.Add(weight);
    }

    // Plans that go on: all where there is room, else those nearest to the aim, and of those without chemicals no fewer than a quarter.
    private List<PlanOutcome> Parents(int controls)
    {
        List<PlanOutcome> all = [.. _outcomes.Where(outcome => outcome.Plan.Count == controls)];
        if (all.Count <= _limits.Parents || controls == _limits.Controls)
            return all;
        List<PlanOutcome> open = [.. all.Where(outcome => !outcome.Reading.Holds).OrderBy(outcome => outcome.Reading.Peak)];
        HashSet<PlanOutcome> some = [.. open.Where(outcome => outcome.Weight.NonChemical).Take(_limits.Parents / 4)];
        foreach (PlanOutcome outcome in open)
        {
            if (some.Count >= _limits.Parents)
                break;
            some.Add(outcome);
        }

        foreach (PlanOutcome outcome in open)
        {
            if (!some.Contains(outcome))
                _leftAside += Math.Max(0, _candidates.Count(candidate => candidate.Start > _candidates[outcome.Plan[^1]].Start && candidate.Start < outcome.Reading.FirstOver));
        }

        return [.. all.Where(outcome => outcome.Reading.Holds || some.Contains(outcome))];
    }

    private PlanSearchResult Result() =>
        new([.. _outcomes], new(Conceivable(), _run, _tooLate, _heavier, _notNeeded, _leftAside, _conflicts));

    // Sets of up to the most controls on different days: elementary symmetric sums of the candidates of each day.
    private double Conceivable()
    {
        double[] sums = new double[_limits.Controls + 1];
        sums[0] = 1d;
        foreach (int ofDay in _candidates.GroupBy(candidate => candidate.Start).Select(day => day.Count()))
        {
            for (int size = sums.Length - 1; size >= 1; size--)
                sums[size] += sums[size - 1] * ofDay;
        }

        return sums.Sum();
    }

    private readonly record struct Child(int Parent, int Next, float Guess, PlanWeight Weight, ulong Kinds);
}
