namespace Foundress.Reports.Drawing;

/// <summary>Where a day stands between the left and the right of a picture.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Left">Where the first day begins.</param>
/// <param name="Right">Where the last day ends.</param>
internal readonly record struct DayScale(DateOnly From, DateOnly To, double Left, double Right)
{
    private double PerDay => (Right - Left) / (To.DayNumber - From.DayNumber + 1);

    /// <summary>Where a day begins; days outside are brought to the edge.</summary>
    public double Begin(DateOnly day) => Clamp(Left + (day.DayNumber - From.DayNumber) * PerDay);

    /// <summary>The middle of a day.</summary>
    public double Middle(DateOnly day) => Clamp(Left + (day.DayNumber - From.DayNumber + 0.5) * PerDay);

    /// <summary>Where a day ends.</summary>
    public double End(DateOnly day) => Clamp(Left + (day.DayNumber - From.DayNumber + 1) * PerDay);

    /// <summary>Whether the day is shown.</summary>
    public bool Holds(DateOnly day) => day >= From && day <= To;

    private double Clamp(double x) => Math.Clamp(x, Left, Right);
}
