namespace Foundress.Science.Planning;

/// <summary>A control that a plan may hold, on one of its days.</summary>
/// <param name="Control">Which control: the same number for the same control on other days.</param>
/// <param name="Start">The first day, counted from the day the plan is made, 0 or more.</param>
/// <param name="End">The day it is over, not before <paramref name="Start"/>.</param>
/// <param name="Hazard">How much it can hurt people, bees and comb: any scale on which more is worse, 0 or more.</param>
/// <param name="Labour">How much work it is: any scale on which more is worse, 0 or more.</param>
/// <param name="Cost">What it costs, in one unit for all; 0 for every control where costs are not known.</param>
/// <param name="NonChemical">True when no substance is given.</param>
public readonly record struct PlanCandidate(int Control, int Start, int End, double Hazard, double Labour, double Cost, bool NonChemical)
{
    /// <summary>Throws when a value is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Names the value.</exception>
    public PlanCandidate Checked()
    {
        if (Start < 0)
            throw new ArgumentOutOfRangeException(nameof(Start), Start, "A control of a plan starts on day 0 or later.");
        if (End < Start)
            throw new ArgumentOutOfRangeException(nameof(End), End, $"A control that starts on day {Start} cannot be over before.");
        Positive(Hazard, nameof(Hazard));
        Positive(Labour, nameof(Labour));
        Positive(Cost, nameof(Cost));
        return this;
    }

    private static void Positive(double value, string name)
    {
        if (!(value >= 0d) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, "A finite number, 0 or more, is needed.");
    }
}
