namespace Foundress.Science.Forecasting;

/// <summary>When a colony first stands over a line.</summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
public sealed class CrossingDates
{
    private readonly double[] _by;

    internal CrossingDates(DateOnly firstDay, double[] by) => (FirstDay, _by) = (firstDay, by);

    /// <summary>The first day looked at.</summary>
    public DateOnly FirstDay { get; }

    /// <summary>The last day looked at.</summary>
    public DateOnly LastDay => FirstDay.AddDays(_by.Length - 1);

    /// <summary>The chance that the line is not crossed by the last day.</summary>
    public Chance Never => Chance.Of(1d - _by[^1]);

    /// <summary>The chance of having been over the line on a day or before it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside.</exception>
    public Chance By(DateOnly day)
    {
        int index = day.DayNumber - FirstDay.DayNumber;
        return index >= 0 && index < _by.Length
            ? Chance.Of(_by[index])
            : throw new ArgumentOutOfRangeException(nameof(day), day, $"The forecast runs from {FirstDay:yyyy-MM-dd} to {LastDay:yyyy-MM-dd}.");
    }

    /// <summary>The first day by which the line is crossed with a chance; null when that is not before the end.</summary>
    public DateOnly? Day(Chance chance)
    {
        int index = Array.FindIndex(_by, by => by >= chance.Value);
        return index < 0 ? null : FirstDay.AddDays(index);
    }
}
