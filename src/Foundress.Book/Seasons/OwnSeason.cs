namespace Foundress.Book.Seasons;

/// <summary>The keeper's own months of brood, as days of a northern year.</summary>
public static class OwnSeason
{
    private static readonly int[] BeforeMonth = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

    /// <summary>The first and the last day of laying, counted as in the north: southern months are taken six months on.</summary>
    /// <param name="from">The first month, 1 to 12.</param>
    /// <param name="to">The last month, 1 to 12.</param>
    /// <param name="isSouth">Whether the apiary lies south of the equator.</param>
    /// <returns>Null where the months do not follow each other within such a year.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A month is not one.</exception>
    public static (double Opens, double Closes)? DaysOf(int from, int to, bool isSouth)
    {
        if (from is < 1 or > 12)
            throw new ArgumentOutOfRangeException(nameof(from), from, "A month is a number from 1 to 12.");
        if (to is < 1 or > 12)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A month is a number from 1 to 12.");
        var (first, last) = isSouth ? (((from + 5) % 12) + 1, ((to + 5) % 12) + 1) : (from, to);
        return last < first ? null : (BeforeMonth[first - 1] + 1, BeforeMonth[last]);
    }
}
