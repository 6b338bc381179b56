namespace Foundress.Science.Estimation;

/// <summary>Limits around a change between two rounds.</summary>
/// <param name="Lower">The lower limit.</param>
/// <param name="Upper">The upper limit.</param>
/// <param name="Confidence">Two-sided confidence, above 0 and below 1; half of the rest lies beyond each limit.</param>
public readonly record struct ChangeInterval(double Lower, double Upper, double Confidence)
{
    /// <summary>True when the value lies between the limits or on one.</summary>
    public bool Contains(double value) => value >= Lower && value <= Upper;
}
