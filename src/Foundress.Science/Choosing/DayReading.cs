namespace Foundress.Science.Choosing;

/// <summary>Which temperature of a day.</summary>
public enum DayReading
{
    /// <summary>The lowest.</summary>
    Low,

    /// <summary>The mean.</summary>
    Mean,

    /// <summary>The highest.</summary>
    High,
}
