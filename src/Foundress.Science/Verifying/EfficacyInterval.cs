namespace Foundress.Science.Verifying;

/// <summary>Limits around an efficacy, as shares: 0.95 is 95 %.</summary>
/// <param name="Lower">The lower limit; below 0 when the mites may have grown in number.</param>
/// <param name="Upper">The upper limit, at most 1 (above it only by <see cref="ReductionIntervals.NormalPaired"/>, which knows no bound).</param>
/// <param name="Confidence">Two-sided confidence, above 0 and below 1; half of the rest lies beyond each limit.</param>
public readonly record struct EfficacyInterval(double Lower, double Upper, double Confidence)
{
    /// <summary>True when the share lies between the limits or on one.</summary>
    public bool Contains(double share) => share >= Lower && share <= Upper;
}
