namespace Foundress.Science.Choosing;

/// <summary>Usual temperatures by month, taken as those of the middle of the month and straight between.</summary>
public sealed class MonthlyNormals : ITemperatures
{
    private readonly double[] _lows;
    private readonly double[] _highs;

    /// <summary>Normals of a place.</summary>
    /// <param name="lows">Usual lowest of the day, January to December.</param>
    /// <param name="highs">Usual highest of the day, January to December.</param>
    /// <exception cref="ArgumentException">There are not twelve of each.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A temperature is out of its range, or a lowest above its highest.</exception>
    public MonthlyNormals(IReadOnlyList<double> lows, IReadOnlyList<double> highs)
    {
        ArgumentNullException.ThrowIfNull(lows);
        ArgumentNullException.ThrowIfNull(highs);
        if (lows.Count != 12 || highs.Count != 12)
            throw new ArgumentException($"Normals have twelve lowest and twelve highest temperatures, January to December; {lows.Count} and {highs.Count} were given.", nameof(lows));
        for (int month = 0; month < 12; month++)
            _ = new DayTemperatures(lows[month], highs[month]);
        (_lows, _highs) = ([.. lows], [.. highs]);
    }

    /// <inheritdoc/>
    public DayTemperatures? On(DateOnly day)
    {
        // Where the day lies between the middles of two months.
        double place = ((day.Day - 0.5) / DateTime.DaysInMonth(day.Year, day.Month)) - 0.5;
        int month = day.Month - 1;
        int other = (month + (place < 0d ? 11 : 1)) % 12;
        double part = Math.Abs(place);
        return new(_lows[month] + (part * (_lows[other] - _lows[month])), _highs[month] + (part * (_highs[other] - _highs[month])));
    }

    /// <inheritdoc/>
    public bool IsUsual(DateOnly day) => true;
}
