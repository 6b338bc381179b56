namespace Foundress.Science.Estimation;

/// <summary>
/// What is taken for granted about growth per day (of the natural logarithm of the level) before any jar: the mean of the
/// colonies compared is normal around 0, and the colonies are normal around it with a half-normal spread.
/// </summary>
public readonly record struct GrowthPrior
{
    /// <summary>A prior.</summary>
    /// <param name="centreSpread">Standard deviation of the mean growth per day, 0.001 to 1.</param>
    /// <param name="betweenScale">Scale of the half-normal spread between colonies, per day, 0.0005 to 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public GrowthPrior(double centreSpread, double betweenScale)
    {
        if (centreSpread is not (>= 0.001 and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(centreSpread), centreSpread, "The standard deviation of the mean growth per day lies between 0.001 and 1.");
        if (betweenScale is not (>= 0.0005 and <= 0.5))
            throw new ArgumentOutOfRangeException(nameof(betweenScale), betweenScale, "The scale of the spread of growth between colonies lies between 0.0005 and 0.5 per day.");
        (CentreSpread, BetweenScale) = (centreSpread, betweenScale);
    }

    /// <summary>The default: mean growth within 10 % a day either way (95 %), spread between colonies of about 2 % a day.</summary>
    public static GrowthPrior Weak { get; } = new(0.05, 0.02);

    /// <summary>Standard deviation of the mean growth per day.</summary>
    public double CentreSpread { get; }

    /// <summary>Scale of the half-normal spread between colonies, per day.</summary>
    public double BetweenScale { get; }
}
