namespace Foundress.Knowledge;

/// <summary>Which temperature of the day a limit is set on: outdoor air, in the shade.</summary>
public enum DayTemperature
{
    /// <summary>The lowest of the day. Written <c>daily-minimum</c>.</summary>
    Minimum,

    /// <summary>The mean of the day. Written <c>daily-mean</c>.</summary>
    Mean,

    /// <summary>The highest of the day. Written <c>daily-maximum</c>.</summary>
    Maximum,
}
