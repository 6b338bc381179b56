namespace Foundress.Science.Estimation;

/// <summary>The jars of one colony on one day.</summary>
public sealed record CourseVisit
{
    /// <summary>A visit with its jars.</summary>
    /// <param name="day">Day on any scale shared by the visits of a stretch; finite.</param>
    /// <param name="jars">At least one jar.</param>
    /// <exception cref="ArgumentException">There is no jar.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="day"/> is not finite.</exception>
    public CourseVisit(double day, IReadOnlyList<JarCount> jars)
    {
        ArgumentNullException.ThrowIfNull(jars);
        if (!double.IsFinite(day))
            throw new ArgumentOutOfRangeException(nameof(day), day, "The day of a visit is a finite number.");
        if (jars.Count == 0)
            throw new ArgumentException("A visit of a course has at least one jar.", nameof(jars));
        (Day, Jars) = (day, [.. jars]);
    }

    /// <summary>Day of the visit.</summary>
    public double Day { get; }

    /// <summary>Its jars.</summary>
    public IReadOnlyList<JarCount> Jars { get; }
}
