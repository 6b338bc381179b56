namespace Foundress.Science.Estimation;

/// <summary>A rate or share with its limits.</summary>
/// <param name="Value">The rate counted.</param>
/// <param name="Lower">The lower limit.</param>
/// <param name="Upper">The upper limit.</param>
/// <param name="Confidence">Two-sided confidence, above 0 and below 1.</param>
public readonly record struct RateInterval(double Value, double Lower, double Upper, double Confidence)
{
    /// <summary>True when the rate lies between the limits or on one.</summary>
    public bool Contains(double rate) => rate >= Lower && rate <= Upper;
}
