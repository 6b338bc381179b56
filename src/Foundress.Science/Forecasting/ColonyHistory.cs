using Foundress.Science.Dynamics;

namespace Foundress.Science.Forecasting;

/// <summary>What is known of one colony: its course, its counts, and which of its controls others of the apiary had too.</summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
public sealed class ColonyHistory
{
    private readonly Evidence[] _evidence;
    private readonly string[] _controlKeys;

    /// <summary>A history.</summary>
    /// <param name="days">The course.</param>
    /// <param name="startDay">The day the reckoning starts at, some weeks before the first count so that the cells find their balance; the same calendar day for all colonies of an apiary.</param>
    /// <param name="startLoad">Median of the mites per adult bee that a colony of which nothing is known has on that day, above 0.</param>
    /// <param name="evidence">The counts, in any order; none before <paramref name="startDay"/>.</param>
    /// <param name="controlKeys">For each control of the course a name; the same name in two colonies means one and the same application.</param>
    /// <exception cref="ArgumentException">A value is out of its range, or the numbers of controls and keys differ.</exception>
    public ColonyHistory(ColonyDays days, int startDay, double startLoad, IReadOnlyList<Evidence> evidence, IReadOnlyList<string> controlKeys)
    {
        ArgumentNullException.ThrowIfNull(days);
        if (startDay < 0 || startDay > days.Days)
            throw new ArgumentException($"The start, day {startDay}, lies outside the course of {days.Days} days.", nameof(startDay));
        if (!(startLoad > 0d) || !double.IsFinite(startLoad))
            throw new ArgumentException($"The usual load at the start is {startLoad}: a finite number above 0 is needed.", nameof(startLoad));
        if (controlKeys.Count != days.Controls.Length)
            throw new ArgumentException($"The course has {days.Controls.Length} controls, but {controlKeys.Count} keys are given.", nameof(controlKeys));
        foreach (Evidence one in evidence)
        {
            if (one.Day < startDay || one.Day > days.Days)
                throw new ArgumentException($"A count of day {one.Day} lies outside days {startDay} to {days.Days}.", nameof(evidence));
        }

        Days = days;
        StartDay = startDay;
        StartLoad = startLoad;
        _evidence = [.. evidence.OrderBy(one => one.Day).ThenBy(one => one.Kind).ThenBy(one => one.Count).ThenBy(one => one.Base)];
        _controlKeys = [.. controlKeys];
    }

    /// <summary>The course.</summary>
    public ColonyDays Days { get; }

    /// <summary>The day the reckoning starts at.</summary>
    public int StartDay { get; }

    /// <summary>Median mites per adult bee at the start.</summary>
    public double StartLoad { get; }

    /// <summary>The counts by day.</summary>
    public ReadOnlySpan<Evidence> Evidence => _evidence;

    /// <summary>The names of the controls.</summary>
    public ReadOnlySpan<string> ControlKeys => _controlKeys;
}
