namespace Foundress.Science.Forecasting;

/// <summary>One count of mites of a colony, with what is needed to hold it against a course.</summary>
/// <remarks>A jar of a day is taken before a control of that day starts.</remarks>
public readonly record struct Evidence
{
    private Evidence(int day, EvidenceKind kind, int count, double basis, double size) => (Day, Kind, Count, Base, Size) = (day, kind, count, basis, size);

    /// <summary>The day, counted from the first day of the course.</summary>
    public int Day { get; }

    /// <summary>What was counted.</summary>
    public EvidenceKind Kind { get; }

    /// <summary>The count.</summary>
    public int Count { get; }

    /// <summary>What the quantity of the course is multiplied by to give the mean count: for a jar bees times recovery.</summary>
    public double Base { get; }

    /// <summary>Size of the negative binomial distribution of the count about its mean: small for counts that scatter widely.</summary>
    public double Size { get; }

    /// <summary>Mites in a jar of bees: count about bees × recovery × mites per bee.</summary>
    /// <param name="day">The day.</param>
    /// <param name="mites">Mites counted, 0 or more.</param>
    /// <param name="bees">The bees.</param>
    /// <param name="recovery">Share of the mites that the method brings off, above 0 to 1.</param>
    /// <param name="size">Size of the scatter between jars of one colony on one day, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static Evidence Jar(int day, int mites, BeeCount bees, double recovery, double size)
    {
        if (mites < 0)
            throw new ArgumentOutOfRangeException(nameof(mites), mites, "A count of mites is 0 or more.");
        if (recovery is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(recovery), recovery, "The share a method brings off lies above 0 and at most at 1.");
        if (!(size > 0d) || !double.IsFinite(size))
            throw new ArgumentOutOfRangeException(nameof(size), size, "The size of the scatter is a finite number above 0.");
        if (!(bees.Bees >= 1d))
            throw new ArgumentOutOfRangeException(nameof(bees), bees.Bees, "A jar holds at least one bee.");
        return new(day, EvidenceKind.Jar, mites, bees.Bees * recovery, Widened(size, bees.LogSpread));
    }

    /// <summary>Mites fallen on a board.</summary>
    /// <param name="day">The last day of the board.</param>
    /// <param name="fallen">Mites counted, 0 or more.</param>
    /// <param name="daysOnBoard">Days the board lay, above 0.</param>
    /// <param name="mitesPerFallen">All mites of the colony for one fallen in a day, above 0.</param>
    /// <param name="logSpread">Spread of that factor: standard deviation of its natural logarithm, 0 to 3.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static Evidence Fall(int day, int fallen, double daysOnBoard, double mitesPerFallen, double logSpread)
    {
        if (fallen < 0)
            throw new ArgumentOutOfRangeException(nameof(fallen), fallen, "A count of mites is 0 or more.");
        if (!(daysOnBoard > 0d) || !double.IsFinite(daysOnBoard))
            throw new ArgumentOutOfRangeException(nameof(daysOnBoard), daysOnBoard, "A board lies for some time.");
        if (!(mitesPerFallen > 0d) || !double.IsFinite(mitesPerFallen))
            throw new ArgumentOutOfRangeException(nameof(mitesPerFallen), mitesPerFallen, "The factor from fall to mites is a finite number above 0.");
        if (logSpread is not (>= 0d and <= 3d))
            throw new ArgumentOutOfRangeException(nameof(logSpread), logSpread, "The log spread of the factor lies between 0 and 3.");
        return new(day, EvidenceKind.Fall, fallen, daysOnBoard / mitesPerFallen, Widened(1e6, logSpread));
    }

    /// <summary>Infested cells among sealed worker cells opened.</summary>
    /// <param name="day">The day.</param>
    /// <param name="infested">Infested cells, 0 to <paramref name="opened"/>.</param>
    /// <param name="opened">Cells opened, 1 or more.</param>
    /// <param name="size">Size of the scatter between combs of one colony, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static Evidence WorkerCells(int day, int infested, int opened, double size)
    {
        if (opened < 1)
            throw new ArgumentOutOfRangeException(nameof(opened), opened, "At least one cell must have been opened.");
        if (infested < 0 || infested > opened)
            throw new ArgumentOutOfRangeException(nameof(infested), infested, $"Infested cells lie between 0 and the {opened} opened.");
        if (!(size > 0d) || !double.IsFinite(size))
            throw new ArgumentOutOfRangeException(nameof(size), size, "The size of the scatter is a finite number above 0.");
        return new(day, EvidenceKind.WorkerCells, infested, opened, size);
    }

    // A lognormal factor with that spread adds its own relative variance.
    internal static double Widened(double size, double logSpread)
    {
        double relative = Numerics.PortableFunctions.Exp(logSpread * logSpread) - 1d;
        return 1d / ((1d / size) + (relative * (1d + (1d / size))));
    }
}
