namespace Foundress.Science.Estimation;

/// <summary>Limits around the number of mites that were on the bees.</summary>
/// <param name="Lower">The lower limit, never below the mites counted.</param>
/// <param name="Upper">The upper limit; none when the counts cannot rule out any number, however large.</param>
/// <param name="Confidence">Two-sided confidence, above 0 and below 1.</param>
public readonly record struct RemovalInterval(double Lower, double? Upper, double Confidence)
{
    /// <summary>Distance between the limits, in mites; none without an upper limit.</summary>
    public double? Width => Upper - Lower;

    /// <summary>True when the number lies between the limits or on one.</summary>
    public bool Contains(double mites) => mites >= Lower && !(mites > Upper);
}
