namespace Foundress.Science.Judging;

/// <summary>How sure one wants to be before calling a level below or above a line.</summary>
public readonly record struct Certainty
{
    /// <summary>A pair of limits.</summary>
    /// <param name="sureBelow">A chance of being over the line of this or less counts as below.</param>
    /// <param name="sureAbove">A chance of being over the line of this or more counts as above.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sureBelow"/> is not less than <paramref name="sureAbove"/>.</exception>
    public Certainty(Chance sureBelow, Chance sureAbove)
    {
        if (sureBelow >= sureAbove)
        {
            throw new ArgumentOutOfRangeException(
                nameof(sureBelow), sureBelow, $"The chance that counts as surely below ({sureBelow}) must be less than the one that counts as surely above ({sureAbove}).");
        }

        (SureBelow, SureAbove) = (sureBelow, sureAbove);
    }

    /// <summary>The largest chance of being over the line that still counts as below.</summary>
    public Chance SureBelow { get; }

    /// <summary>The smallest chance of being over the line that counts as above.</summary>
    public Chance SureAbove { get; }
}
