namespace Foundress.Science.Planning;

/// <summary>How far a search goes.</summary>
/// <param name="Controls">Most controls in a plan, 0 to 5.</param>
/// <param name="Runs">Most plans worked out for each number of controls above one, 1 or more; what the first reckoning holds for worse is left aside.</param>
/// <param name="Parents">Most plans of one number of controls that are gone on from, 1 or more.</param>
/// <param name="DatesEach">Most plans of the same controls on other days that are worked out, 1 or more.</param>
public readonly record struct PlanLimits(int Controls, int Runs, int Parents, int DatesEach)
{
    /// <summary>Limits that leave nothing aside; for few candidates.</summary>
    /// <param name="controls">Most controls in a plan.</param>
    public static PlanLimits Everything(int controls) => new(controls, int.MaxValue, int.MaxValue, int.MaxValue);

    /// <summary>Throws when a value is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Names the value.</exception>
    public PlanLimits Checked()
    {
        if (Controls is < 0 or > 5)
            throw new ArgumentOutOfRangeException(nameof(Controls), Controls, "A plan holds 0 to 5 controls.");
        AtLeastOne(Runs, nameof(Runs));
        AtLeastOne(Parents, nameof(Parents));
        AtLeastOne(DatesEach, nameof(DatesEach));
        return this;
    }

    private static void AtLeastOne(int value, string name)
    {
        if (value < 1)
            throw new ArgumentOutOfRangeException(name, value, "At least 1 is needed.");
    }
}
