namespace Foundress.Science.Sampling;

/// <summary>
/// The trade's rule of thumb for how many colonies to sample and when. The figures are data (common practice, no source);
/// this type only applies them.
/// </summary>
public sealed record RuleOfThumb
{
    /// <summary>A rule.</summary>
    /// <param name="sampleAllBelow">With fewer colonies than this, all are sampled; 1 or more.</param>
    /// <param name="oneApiary">Colonies sampled in one larger apiary, 1 to <paramref name="sampleAllBelow"/>.</param>
    /// <param name="shareLow">Lowest share of all colonies in several apiaries, above 0 and at most <paramref name="shareHigh"/>.</param>
    /// <param name="shareHigh">Highest share of all colonies in several apiaries, at most 1.</param>
    /// <param name="timesAYear">Sampling rounds in a year, 1 or more.</param>
    /// <param name="daysAfterControl">Days after the end of a control within which to sample again, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public RuleOfThumb(int sampleAllBelow, int oneApiary, double shareLow, double shareHigh, int timesAYear, int daysAfterControl)
    {
        SampleAllBelow = AtLeastOne(sampleAllBelow, nameof(sampleAllBelow));
        OneApiary = AtLeastOne(oneApiary, nameof(oneApiary));
        if (oneApiary > sampleAllBelow)
        {
            throw new ArgumentOutOfRangeException(
                nameof(oneApiary), oneApiary, $"A larger apiary cannot need more colonies than one small enough to sample whole ({sampleAllBelow}).");
        }

        if (!(shareLow > 0d && shareLow <= shareHigh && shareHigh <= 1d))
            throw new ArgumentOutOfRangeException(nameof(shareLow), shareLow, $"The shares of colonies must run 0 < low <= high <= 1; high is {shareHigh}.");
        (ShareLow, ShareHigh) = (shareLow, shareHigh);
        TimesAYear = AtLeastOne(timesAYear, nameof(timesAYear));
        DaysAfterControl = AtLeastOne(daysAfterControl, nameof(daysAfterControl));
    }

    /// <summary>With fewer colonies than this, all are sampled.</summary>
    public int SampleAllBelow { get; }

    /// <summary>Colonies sampled in one larger apiary.</summary>
    public int OneApiary { get; }

    /// <summary>Lowest share of all colonies in several apiaries.</summary>
    public double ShareLow { get; }

    /// <summary>Highest share of all colonies in several apiaries.</summary>
    public double ShareHigh { get; }

    /// <summary>Sampling rounds in a year.</summary>
    public int TimesAYear { get; }

    /// <summary>Days after the end of a control within which to sample again.</summary>
    public int DaysAfterControl { get; }

    /// <summary>Colonies to sample when there is one apiary.</summary>
    /// <param name="colonies">Colonies in it, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="colonies"/> is negative.</exception>
    public SampleSize ForApiary(int colonies)
    {
        if (colonies < 0)
            throw new ArgumentOutOfRangeException(nameof(colonies), colonies, "The number of colonies is 0 or more.");
        return new(colonies < SampleAllBelow ? colonies : Math.Min(OneApiary, colonies), colonies);
    }

    /// <summary>
    /// Colonies to sample in an operation: the share of all colonies, rounded up, but never fewer than one in each apiary and
    /// never fewer than one apiary with as many colonies would need. Shared out in proportion to the colonies, largest
    /// remainders first, every apiary with a colony getting at least one.
    /// </summary>
    /// <param name="coloniesPerApiary">Colonies in each apiary, 0 or more; at least one apiary.</param>
    /// <remarks>
    /// The bare share would ask for 2 or 3 colonies of 45 in three apiaries: fewer than it takes to visit each, and fewer than
    /// the same keeper would sample with one apiary. The two floors keep a small operation from being sampled less for
    /// having moved some colonies.
    /// </remarks>
    /// <exception cref="ArgumentException">There is no apiary.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number of colonies is negative.</exception>
    public OperationSample ForOperation(IReadOnlyList<int> coloniesPerApiary)
    {
        ArgumentNullException.ThrowIfNull(coloniesPerApiary);
        if (coloniesPerApiary.Count == 0)
            throw new ArgumentException("An operation has at least one apiary.", nameof(coloniesPerApiary));
        int all = 0;
        int occupied = 0;
        foreach (int colonies in coloniesPerApiary)
        {
            if (colonies < 0)
                throw new ArgumentOutOfRangeException(nameof(coloniesPerApiary), colonies, "The number of colonies in an apiary is 0 or more.");
            all = checked(all + colonies);
            occupied += colonies > 0 ? 1 : 0;
        }

        int floor = Math.Max(occupied, ForApiary(all).Take);
        if (occupied <= 1)
            return new(new(floor, all), new(floor, all), ShareOut(floor, all, coloniesPerApiary));
        int low = Math.Max(floor, RoundUp(ShareLow * all));
        int high = Math.Max(floor, RoundUp(ShareHigh * all));
        return new(new(low, all), new(high, all), ShareOut(high, all, coloniesPerApiary));
    }

    private static SampleSize[] ShareOut(int take, int all, IReadOnlyList<int> colonies)
    {
        var shares = new int[colonies.Count];
        int left = take;
        for (int i = 0; i < shares.Length; i++)
        {
            // Rounded down, so the sum cannot pass the total unless the one-each floor lifts it; that is taken back below.
            shares[i] = colonies[i] == 0 ? 0 : Math.Max(1, (int)((long)take * colonies[i] / all));
            left -= shares[i];
        }

        for (; left > 0; left--)
            shares[Furthest(shares, i => shares[i] < colonies[i] ? Behind(i) : double.NegativeInfinity)]++;
        for (; left < 0; left++)
            shares[Furthest(shares, i => shares[i] > 1 ? -Behind(i) : double.NegativeInfinity)]--;
        return [.. shares.Select((share, i) => new SampleSize(share, colonies[i]))];

        double Behind(int i) => ((double)take * colonies[i] / all) - shares[i];
    }

    private static int Furthest(int[] shares, Func<int, double> score)
    {
        int best = 0;
        for (int i = 1; i < shares.Length; i++)
        {
            if (score(i) > score(best))
                best = i;
        }

        return best;
    }

    // A hair is taken off first: 0.05 · 100 is 5, not 6, whatever the last binary digit says.
    private static int RoundUp(double colonies) => (int)Math.Ceiling(colonies - 1e-9);

    private static int AtLeastOne(int value, string name) =>
        value >= 1 ? value : throw new ArgumentOutOfRangeException(name, value, "This figure of the rule of thumb is a whole number of 1 or more.");
}
