namespace Foundress.Science.Planning;

/// <summary>What a plan must keep to.</summary>
/// <param name="Tolerance">The greatest chance of standing over the line that is borne, above 0 and below 1.</param>
/// <param name="JudgedFrom">The first day that counts: earlier ones no control could have changed in time. 0 or more.</param>
public readonly record struct PlanAim(double Tolerance, int JudgedFrom)
{
    /// <summary>Throws when a value is out of its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Names the value.</exception>
    public PlanAim Checked()
    {
        if (Tolerance is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(Tolerance), Tolerance, "The chance that is borne lies between 0 and 1.");
        if (JudgedFrom < 0)
            throw new ArgumentOutOfRangeException(nameof(JudgedFrom), JudgedFrom, "Days are counted from 0.");
        return this;
    }
}
