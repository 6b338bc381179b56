using Foundress.Science.Numerics;
using Foundress.Science.Planning;

namespace Foundress.Science.Tests.Planning;

/// <summary>Colonies simple enough to work out every plan of theirs: log levels that grow by the day and fall by a control's effect, with a normal spread.</summary>
internal sealed class PlainPlans : IPlanModel
{
    private const int Step = 7;
    private const int Weeks = 16;
    private const double Spread = 0.7;

    private readonly (double Level, double Growth)[] _colonies;
    private readonly double[] _effects;
    private readonly int _least;
    private readonly bool _rotates;

    public PlainPlans(ulong seed, int candidates, double tolerance, int judgedFrom, int leastApart, bool rotates)
    {
        SeededGenerator generator = SeededGenerator.ForPart(seed, "plain plans");
        Aim = new(tolerance, judgedFrom);
        (_least, _rotates) = (leastApart, rotates);
        _colonies = [.. Enumerable.Range(0, 3).Select(_ => (-2.5 + (1.5 * generator.NextDouble()), 0.01 + (0.02 * generator.NextDouble())))];
        Candidates =
        [
            .. Enumerable.Range(0, candidates)
                .Select(_ =>
                {
                    int start = Step * (int)(generator.NextDouble() * 12d);
                    double hazard = Math.Floor(generator.NextDouble() * 5d);
                    return new PlanCandidate((int)(generator.NextDouble() * 4d), start, start + (int)(generator.NextDouble() * 28d), hazard, Math.Floor(generator.NextDouble() * 5d), Math.Floor(generator.NextDouble() * 9d), generator.NextDouble() < 0.3);
                })
                .OrderBy(candidate => candidate.Start),
        ];
        _effects = [.. Candidates.Select(_ => 0.2 + (1.6 * generator.NextDouble()))];
    }

    public PlanAim Aim { get; }

    public IReadOnlyList<PlanCandidate> Candidates { get; }

    public int Asked { get; private set; }

    public PlanReading Nothing() => Read([]);

    public IReadOnlyList<PlanReading> Further(IReadOnlyList<int> earlier, IReadOnlyList<int> further) => [.. further.Select(next => Read([.. earlier, next]))];

    public int Conflict(IReadOnlyList<int> earlier, int next)
    {
        foreach (int before in earlier)
        {
            if (Candidates[next].Start - Candidates[before].Start < _least)
                return 0;
            if (_rotates && Candidates[before].Control == Candidates[next].Control)
                return 1;
        }

        return -1;
    }

    /// <summary>Every plan the rules allow, worked out one after the other.</summary>
    public List<PlanOutcome> All(int most)
    {
        List<PlanOutcome> all = [new([], Nothing(), PlanWeight.Nothing)];
        for (int i = 0; i < all.Count; i++)
        {
            PlanOutcome parent = all[i];
            for (int next = 0; next < Candidates.Count && parent.Plan.Count < most; next++)
            {
                if (parent.Plan.Count > 0 && Candidates[next].Start <= Candidates[parent.Plan[^1]].Start)
                    continue;
                if (Conflict(parent.Plan, next) < 0)
                    all.Add(new([.. parent.Plan, next], Read([.. parent.Plan, next]), parent.Weight.With(Candidates[next])));
            }
        }

        return all;
    }

    private PlanReading Read(int[] plan)
    {
        Asked++;
        float[] chances = new float[(Weeks + 1) * _colonies.Length];
        for (int week = 0; week <= Weeks; week++)
        {
            for (int colony = 0; colony < _colonies.Length; colony++)
            {
                double log = _colonies[colony].Level + (_colonies[colony].Growth * week * Step);
                foreach (int place in plan)
                    log -= _effects[place] * Math.Clamp((week * Step) - Candidates[place].Start, 0, 14) / 14d;
                chances[(week * _colonies.Length) + colony] = (float)NormalDistribution.Cumulative(log / Spread);
            }
        }

        return new(Step, _colonies.Length, chances, Aim);
    }
}
