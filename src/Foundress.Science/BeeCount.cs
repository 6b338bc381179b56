using System.Globalization;

namespace Foundress.Science;

/// <summary>
/// The number of adult bees in a jar, with what is not known about it. The number is modelled as lognormal with median
/// <see cref="Bees"/> and standard deviation of its natural logarithm <see cref="LogSpread"/>; a counted jar has no spread.
/// </summary>
public readonly record struct BeeCount
{
    private BeeCount(double bees, double logSpread, BeeBasis basis) => (Bees, LogSpread, Basis) = (bees, logSpread, basis);

    /// <summary>The number of bees: exact when counted, otherwise the median. At least 1.</summary>
    public double Bees { get; }

    /// <summary>Standard deviation of the natural logarithm of the number; 0 when counted, at most 1.</summary>
    /// <remarks>For small values this is the relative spread: 0.15 is about 15 per cent.</remarks>
    public double LogSpread { get; }

    /// <summary>How the number is known.</summary>
    public BeeBasis Basis { get; }

    /// <summary>A jar whose bees were all counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="bees"/> is below 1.</exception>
    public static BeeCount Counted(int bees) =>
        bees >= 1 ? new(bees, 0d, BeeBasis.Counted) : throw new ArgumentOutOfRangeException(nameof(bees), bees, "A jar holds at least one bee.");

    /// <summary>A jar whose number of bees is not exactly known.</summary>
    /// <param name="basis">Weighed or assumed.</param>
    /// <param name="bees">The median number, at least 1.</param>
    /// <param name="logSpread">Standard deviation of the natural logarithm, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range, or <paramref name="basis"/> is <see cref="BeeBasis.Counted"/>.</exception>
    public static BeeCount Uncertain(BeeBasis basis, double bees, double logSpread)
    {
        if (basis == BeeBasis.Counted)
            throw new ArgumentOutOfRangeException(nameof(basis), basis, "A counted jar has no spread: use Counted.");
        if (!double.IsFinite(bees) || bees < 1)
            throw new ArgumentOutOfRangeException(nameof(bees), bees, "A jar holds at least one bee.");
        if (logSpread is not (>= 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(logSpread), logSpread, "The log spread of a bee count lies between 0 and 1.");
        return new(bees, logSpread, basis);
    }

    /// <summary>The middle 95 % of the number's distribution: both ends are the number itself when counted.</summary>
    public (double Low, double High) Usual => (Bees * Math.Exp(-1.96 * LogSpread), Bees * Math.Exp(1.96 * LogSpread));

    /// <summary>For logs and debugging.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Bees:G6} bees ({Basis}, log spread {LogSpread:G3})");
}
