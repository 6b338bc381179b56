namespace Foundress.Science.Estimation;

/// <summary>
/// What is taken for granted about an apiary before any jar: the mean level is lognormal, and the spread between colonies
/// (standard deviation of the levels over their mean, 1/√k) is half-normal, cut off at <see cref="WidestSpread"/>.
/// </summary>
/// <remarks>How the figures of <see cref="Weak"/> were chosen, and what they do to coverage: docs/methods/apiary.md.</remarks>
public readonly record struct ApiaryPrior
{
    /// <summary>The widest spread between colonies that is considered: k of 1/36.</summary>
    public const double WidestSpread = 6d;

    /// <summary>A prior.</summary>
    /// <param name="median">Median of the mean level, above 0.</param>
    /// <param name="logSpread">Standard deviation of the natural logarithm of the mean level, 0.1 to 5.</param>
    /// <param name="spreadScale">Scale of the half-normal spread between colonies, 0.05 to 5: about two thirds of the prior lies below it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public ApiaryPrior(MiteLevel median, double logSpread, double spreadScale)
    {
        if (!(median.Per100Bees > 0d))
            throw new ArgumentOutOfRangeException(nameof(median), median, "The median level of the prior is above 0.");
        if (logSpread is not (>= 0.1 and <= 5d))
            throw new ArgumentOutOfRangeException(nameof(logSpread), logSpread, "The log spread of the prior lies between 0.1 and 5.");
        if (spreadScale is not (>= 0.05 and <= 5d))
            throw new ArgumentOutOfRangeException(nameof(spreadScale), spreadScale, "The scale of the spread between colonies lies between 0.05 and 5.");
        (Median, LogSpread, SpreadScale) = (median, logSpread, spreadScale);
    }

    /// <summary>The default: median 2 mites per 100 bees with a log spread of 2 (95 % from 0.04 to 100), spread between colonies of scale 1.5 (median 1.01; 95 % below 2.94, k above 0.12).</summary>
    public static ApiaryPrior Weak { get; } = new(MiteLevel.Per100(2d), 2d, 1.5d);

    /// <summary>Median of the mean level.</summary>
    public MiteLevel Median { get; }

    /// <summary>Standard deviation of the natural logarithm of the mean level.</summary>
    public double LogSpread { get; }

    /// <summary>Scale of the half-normal spread between colonies.</summary>
    public double SpreadScale { get; }
}
