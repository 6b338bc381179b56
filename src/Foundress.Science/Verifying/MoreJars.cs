namespace Foundress.Science.Verifying;

/// <summary>What it would take to tell whether a control worked, if more jars look like those at hand.</summary>
/// <param name="JarsAfter">More jars after, in each of these colonies, that would settle it; null when no reasonable number would.</param>
/// <param name="ColoniesNextTime">Colonies with a jar before and after that would settle it; null when not even ten times as many would.</param>
public sealed record MoreJars(int? JarsAfter, int? ColoniesNextTime)
{
    private const int MostTimes = 6;
    private const int MostColonies = 10;

    /// <summary>What it would take.</summary>
    /// <param name="treated">The jars at hand; not refused by <see cref="EfficacyOf.Group"/>.</param>
    /// <param name="test">The test that could not tell.</param>
    /// <param name="prior">Null for the default.</param>
    /// <exception cref="ArgumentException">No mite was counted before.</exception>
    public static MoreJars ToSettle(IReadOnlyList<JarPair> treated, EfficacyTest test, EfficacyPrior? prior = null)
    {
        ArgumentNullException.ThrowIfNull(test);
        if (EfficacyOf.Group(treated, prior).Refusal is not null)
            throw new ArgumentException("There is no efficacy to settle: no mite was counted before the control.", nameof(treated));
        PairCounts[] counts = [.. treated.Select(pair => pair.Counts)];
        int? jars = null;
        for (int times = 2; times <= MostTimes && jars is null; times++)
        {
            if (Settles([.. counts.Select(pair => pair.WithAfter(times))]))
                jars = times - 1;
        }

        int? colonies = null;
        for (int times = 2; times <= MostColonies && colonies is null; times++)
        {
            if (Settles([.. Enumerable.Repeat(counts, times).SelectMany(pairs => pairs)]))
                colonies = times * counts.Length;
        }

        return new(jars, colonies);

        bool Settles(PairCounts[] pairs) => test.Judge(EfficacyOf.OfCounts(pairs, prior)) != Verdict.CannotTell;
    }
}
