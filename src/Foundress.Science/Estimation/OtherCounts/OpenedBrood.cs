using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// Capped cells that were opened and searched for mites. A scale of its own for each kind of brood: it is not turned into mites per
/// 100 bees. Immutable.
/// </summary>
/// <remarks>Formulas, sources and limits: docs/methods/other-counts.md.</remarks>
public sealed record OpenedBrood
{
    /// <summary>Opened cells.</summary>
    /// <param name="kind">Which brood.</param>
    /// <param name="cells">Cells opened, at least 1.</param>
    /// <param name="infested">Cells with at least one mother mite, 0 to <paramref name="cells"/>.</param>
    /// <param name="mites">Mother mites in all cells, at least <paramref name="infested"/>; none if they were not counted.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public OpenedBrood(BroodKind kind, int cells, int infested, int? mites = null)
    {
        if (!Enum.IsDefined(kind))
            throw new ArgumentOutOfRangeException(nameof(kind), kind, "Say whether worker or drone brood was opened.");
        if (cells < 1)
            throw new ArgumentOutOfRangeException(nameof(cells), cells, "At least one cell must be opened.");
        if (infested < 0 || infested > cells)
            throw new ArgumentOutOfRangeException(nameof(infested), infested, $"Of {cells} opened cells between 0 and {cells} can be infested.");
        if (mites < infested || (infested == 0 && mites > 0))
            throw new ArgumentOutOfRangeException(nameof(mites), mites, $"{infested} infested cells hold at least {infested} mites, and cells without mites none.");
        (Kind, Cells, Infested, Mites) = (kind, cells, infested, mites);
    }

    /// <summary>Which brood.</summary>
    public BroodKind Kind { get; }

    /// <summary>Cells opened.</summary>
    public int Cells { get; }

    /// <summary>Cells with at least one mother mite.</summary>
    public int Infested { get; }

    /// <summary>Mother mites in all cells; none if they were not counted.</summary>
    public int? Mites { get; }

    /// <summary>Share of cells infested, 0 to 1, with the exact interval (Clopper &amp; Pearson 1934).</summary>
    /// <param name="confidence">Two-sided, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public RateInterval ShareInfested(double confidence)
    {
        (double lower, double upper) = CountIntervals.ShareLimits(Infested, Cells, confidence);
        return new((double)Infested / Cells, lower, upper, confidence);
    }

    /// <summary>The chance that the share of cells infested is over a line: tail of the beta posterior with Jeffreys' prior.</summary>
    /// <param name="share">The line as a share of cells, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is out of its range.</exception>
    public Chance ChanceOver(double share)
    {
        if (share is not (>= 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(share), share, "A line for opened brood is a share of cells from 0 to 1; 5 per cent is 0.05.");
        return Chance.Of(BetaFunctions.Upper(Infested + 0.5, Cells - Infested + 0.5, share));
    }

    /// <summary>Mites per cell with the exact Poisson interval (Garwood 1936); none if the mites were not counted.</summary>
    /// <param name="confidence">Two-sided, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is out of its range.</exception>
    public RateInterval? MitesPerCell(double confidence)
    {
        if (Mites is not int mites)
            return null;
        (double lower, double upper) = CountIntervals.PoissonLimits(mites, confidence);
        return new((double)mites / Cells, lower / Cells, upper / Cells, confidence);
    }
}
