using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// Mites that fell onto a board by themselves. A scale of its own: it is not turned into mites per 100 bees. Immutable.
/// </summary>
/// <remarks>Formulas, sources and limits: docs/methods/other-counts.md.</remarks>
public sealed record NaturalFall
{
    /// <summary>A reading of a board.</summary>
    /// <param name="mites">Mites counted, 0 or more.</param>
    /// <param name="days">Days the board lay, above 0 and at most 60.</param>
    /// <param name="shareCounted">Share of the board that was counted, above 0 and at most 1; spread over the whole board, never one strip or corner.</param>
    /// <param name="voids">Conditions that void it; none if it is sound. Each is kept once.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public NaturalFall(int mites, double days, double shareCounted, params IReadOnlyList<FallVoid> voids)
    {
        ArgumentNullException.ThrowIfNull(voids);
        if (mites < 0)
            throw new ArgumentOutOfRangeException(nameof(mites), mites, "The number of mites counted is 0 or more.");
        if (days is not (> 0d and <= 60d))
            throw new ArgumentOutOfRangeException(nameof(days), days, "A board lies for more than 0 and at most 60 days.");
        if (shareCounted is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(shareCounted), shareCounted, "The share of the board counted lies above 0 and at most 1; the whole board is 1.");
        foreach (FallVoid reason in voids)
        {
            if (!Enum.IsDefined(reason))
                throw new ArgumentOutOfRangeException(nameof(voids), reason, "This is not one of the conditions that void a fall.");
        }

        (Mites, Days, ShareCounted) = (mites, days, shareCounted);
        Voids = [.. voids.Distinct().Order()];
    }

    /// <summary>Mites counted.</summary>
    public int Mites { get; }

    /// <summary>Days the board lay.</summary>
    public double Days { get; }

    /// <summary>Share of the board that was counted.</summary>
    public double ShareCounted { get; }

    /// <summary>Conditions that void it.</summary>
    public IReadOnlyList<FallVoid> Voids { get; }

    /// <summary>Mites per day on the whole board, with the exact Poisson interval. It holds the chance of counting only: falls of single days swing more.</summary>
    /// <param name="confidence">Two-sided, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public RateInterval PerDay(double confidence)
    {
        double exposure = Days * ShareCounted;
        (double lower, double upper) = CountIntervals.PoissonLimits(Mites, confidence);
        return new(Mites / exposure, lower / exposure, upper / exposure, confidence);
    }

    /// <summary>The chance that the fall is over a line: tail of the gamma posterior with Jeffreys' prior. Chance of counting only.</summary>
    /// <param name="perDay">The line in mites a day, 0 or more and finite.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="perDay"/> is out of its range.</exception>
    public Chance ChanceOver(double perDay)
    {
        if (!(perDay >= 0d) || !double.IsFinite(perDay))
            throw new ArgumentOutOfRangeException(nameof(perDay), perDay, "A line of mites a day is a finite number, 0 or more.");
        return Chance.Of(GammaFunctions.Upper(Mites + 0.5, Days * ShareCounted * perDay));
    }

    /// <summary>
    /// Range of all mites in the colony: lower limit of the fall times the lowest published factor to upper limit times the
    /// highest. No middle value: where factors for one month differ tenfold, it would mean nothing.
    /// </summary>
    /// <param name="factors">Published factors for the season.</param>
    /// <param name="confidence">Two-sided confidence of the fall, above 0 and below 1.</param>
    /// <returns>None when the fall is void.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public MiteRange? Total(FallFactors factors, double confidence)
    {
        ArgumentNullException.ThrowIfNull(factors);
        RateInterval fall = PerDay(confidence);
        return Voids.Count > 0 ? null : new(fall.Lower * factors.Lowest, fall.Upper * factors.Highest);
    }
}
