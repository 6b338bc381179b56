using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;
using Foundress.Science.Numerics;

namespace Foundress.Science.Planning;

/// <summary>Takes one colony through the courses of plans, and reads its chance of standing over the line every few days.</summary>
/// <remarks>
/// All plans meet the same luck, so that what differs between two is their controls. What the model leaves out is not drawn
/// but taken in as a normal spread about each particle: the chance is smooth with few particles. Mutable, not safe for concurrent use.
/// </remarks>
public sealed class PlanCourse
{
    private const int PerUnit = 64;
    private const double Farthest = 6d;
    private static readonly float[] Normal = [.. Enumerable.Range(0, (int)(2 * Farthest * PerUnit) + 1).Select(i => (float)NormalDistribution.Cumulative(((double)i / PerUnit) - Farthest))];

    private readonly PlanColony _colony;
    private readonly double[] _logLines;
    private readonly int _step;
    private readonly MiteEnsemble _work;
    private readonly float[] _loads;
    private readonly Dictionary<ulong, float[]> _luck = [];
    private readonly Dictionary<int, MiteEnsemble> _stops = [];
    private readonly Stack<MiteEnsemble> _spare = new();

    /// <summary>A runner for a colony.</summary>
    /// <param name="colony">The colony.</param>
    /// <param name="lines">For each day read the mites per adult bee of the line; null on days without one.</param>
    /// <param name="step">Days from one reading to the next, 1 or more.</param>
    public PlanCourse(PlanColony colony, IReadOnlyList<double?> lines, int step)
    {
        ArgumentNullException.ThrowIfNull(colony);
        if (step < 1)
            throw new ArgumentOutOfRangeException(nameof(step), step, "Days go on by at least one.");
        (_colony, _step) = (colony, step);
        _logLines = [.. lines.Select(line => line is { } load ? PortableFunctions.Log(load) : double.PositiveInfinity)];
        _work = new(colony.Particles, colony.Room);
        _loads = new float[colony.Particles];
    }

    /// <summary>Number of days read.</summary>
    public int Days => _logLines.Length;

    /// <summary>Reads a plan from the day it is made on.</summary>
    /// <param name="days">The course with the plan's controls behind those of the record.</param>
    /// <param name="lucks">For each control of the plan that kills, a number of its own.</param>
    /// <param name="chances">Receives a chance for each day read.</param>
    /// <param name="loads">Told the loads of each day read, strayed as in a forecast; null when not wanted.</param>
    public void Read(ColonyDays days, ReadOnlySpan<ulong> lucks, Span<float> chances, Action<int, ReadOnlyMemory<float>>? loads = null)
    {
        Begin(_colony.Ensemble, 0, days, lucks);
        GoOn(days, 0, chances, loads);
    }

    /// <summary>Keeps the state of a plan at the start of some days, for <see cref="ReadFrom"/>.</summary>
    /// <param name="days">The course.</param>
    /// <param name="lucks">For each control of it that kills, a number of its own.</param>
    /// <param name="at">The days, counted from the day the plan is made, in rising order.</param>
    /// <param name="chances">Receives the chances up to the last of those days.</param>
    public void KeepAt(ColonyDays days, ReadOnlySpan<ulong> lucks, IReadOnlyList<int> at, Span<float> chances)
    {
        Begin(_colony.Ensemble, 0, days, lucks);
        foreach (MiteEnsemble kept in _stops.Values)
            _spare.Push(kept);
        _stops.Clear();
        int next = 0;
        foreach (int stop in at)
        {
            // A reading on the very day is of its start: it belongs to what was before.
            for (; next < Days && next * _step <= stop; next++)
                ReadDay(days, next, chances, null);
            MiteRun.Advance(_work, days, _colony.Today + stop, _colony.NoiseSeed);
            MiteEnsemble kept = _spare.Count > 0 ? _spare.Pop() : new(_colony.Particles, _colony.Room);
            kept.CopyFrom(_work, _colony.Room);
            _stops[stop] = kept;
        }
    }

    /// <summary>Reads a plan that goes on from the one kept, with a further control from a day on that was kept.</summary>
    /// <param name="start">The day.</param>
    /// <param name="days">The course with all controls.</param>
    /// <param name="lucks">For each control of the plan that kills, a number of its own.</param>
    /// <param name="chances">Holds the chances before that day, receives those from it on.</param>
    public void ReadFrom(int start, ColonyDays days, ReadOnlySpan<ulong> lucks, Span<float> chances)
    {
        Begin(_stops[start], start, days, lucks);
        GoOn(days, (start / _step) + 1, chances, null);
    }

    private void Begin(MiteEnsemble from, int day, ColonyDays days, ReadOnlySpan<ulong> lucks)
    {
        _work.CopyFrom(from, _colony.Known);
        if (_work.Day != _colony.Today + day)
            throw new InvalidOperationException($"The state kept is of day {_work.Day}, not {_colony.Today + day}.");
        for (int i = 0; i < lucks.Length; i++)
        {
            int control = _colony.Known + i;
            if (!_luck.TryGetValue(lucks[i], out float[]? luck))
                _luck[lucks[i]] = luck = _colony.Luck(lucks[i]);
            ControlScales.Fill(days.Controls[control], _colony.ControlSpread, luck, _work.ControlScale(control));
        }
    }

    private void GoOn(ColonyDays days, int next, Span<float> chances, Action<int, ReadOnlyMemory<float>>? loads)
    {
        for (; next < Days; next++)
            ReadDay(days, next, chances, loads);
    }

    private void ReadDay(ColonyDays days, int next, Span<float> chances, Action<int, ReadOnlyMemory<float>>? loads)
    {
        int day = _colony.Today + (next * _step);
        MiteRun.Advance(_work, days, day, _colony.NoiseSeed);
        MiteRun.Loads(_work, days, _loads);
        chances[next] = Over(days, day, _logLines[next]);
        if (loads is null)
            return;
        _colony.Stray(_loads, days, day);
        loads(next, _loads);
    }

    private float Over(ColonyDays days, int day, double logLine)
    {
        if (double.IsPositiveInfinity(logLine))
            return 0f;
        var (spread, moved) = _colony.SpreadOn(days, day);
        double sum = 0d;
        foreach (float load in _loads)
        {
            if (!(load > 0f))
                continue;
            double away = PortableFunctions.Log(load) + moved - logLine;
            sum += spread > 0d ? Below(away / spread) : away > 0d ? 1d : 0d;
        }

        return (float)Math.Clamp(sum / _loads.Length, 0d, 1d);
    }

    // The standard normal distribution from a table, to five digits.
    private static double Below(double z)
    {
        double at = (Math.Clamp(z, -Farthest, Farthest) + Farthest) * PerUnit;
        int low = Math.Min((int)at, Normal.Length - 2);
        return Normal[low] + ((at - low) * (Normal[low + 1] - Normal[low]));
    }
}
