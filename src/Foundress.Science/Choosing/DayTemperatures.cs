namespace Foundress.Science.Choosing;

/// <summary>Outdoor temperatures of a day in degrees Celsius, in the shade.</summary>
public readonly record struct DayTemperatures
{
    /// <summary>The temperatures of a day.</summary>
    /// <param name="low">The lowest, -60 to 60.</param>
    /// <param name="high">The highest, not below the lowest, to 60.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public DayTemperatures(double low, double high)
    {
        if (low is not (>= -60d and <= 60d))
            throw new ArgumentOutOfRangeException(nameof(low), low, "An outdoor temperature lies between -60 and 60 degrees Celsius.");
        if (!(high >= low && high <= 60d))
            throw new ArgumentOutOfRangeException(nameof(high), high, "The highest temperature of a day is not below the lowest, and at most 60 degrees Celsius.");
        (Low, High) = (low, high);
    }

    /// <summary>The lowest.</summary>
    public double Low { get; }

    /// <summary>The highest.</summary>
    public double High { get; }

    /// <summary>The middle of both, taken as the mean of the day.</summary>
    public double Mean => 0.5 * (Low + High);
}
